import { describe, expect, test } from 'vitest';
import { renderRuleGraphHtml } from '../../src/render/rule-graph-html.js';
import { renderRuleGraphText } from '../../src/render/rule-graph-text.js';
import { plainStyle } from '../../src/render/style.js';
import { columns } from '../../src/render/wrap.js';
import { compileText } from '../support/compile-text.js';

const graph = compileText(`
meter engine "Hour meter" counts h
gauge coolant "Coolant gauge" reads °C  normal 75 to 90  high above 97
duty dusty "Dry, dusty ground"
task level "Check the level <now>"  before each day's work
task oil "Change the engine oil and filter"
  every 100 h of engine or 12 months, whichever first
  first at 50 h of engine
  in dusty every 50 h of engine
  when coolant above normal and not coolant above 110 °C
  allow 10 h late
  covers level
  only if machine older than 2 months
`);

describe('the rules of a task as text', () => {
  test('are a tree in words, each with its place', () => {
    expect(renderRuleGraphText(graph, 'oil', plainStyle(80))).toMatchInlineSnapshot(`
      "Change the engine oil and filter
      │  covers: Check the level <now>
      │  test.due:10:1
      ├─ only if: The machine is older than 2 months
      │     test.due:17:11
      └─ Any of these
         │  test.due:10:1
         ├─ Once at the start, then regularly
         │  │  test.due:12:3
         │  ├─ first: First at 50 h of engine
         │  │     may be late by 10 h of engine
         │  │     coming up within 5 h of engine
         │  │     test.due:12:12
         │  └─ then: Whichever comes first
         │     │  test.due:11:9
         │     ├─ Every 100 h of engine, 50 h in dry, dusty ground
         │     │     counted from when it was done
         │     │     may be late by 10 h of engine
         │     │     coming up within 10 h of engine
         │     │     test.due:11:9
         │     └─ Every 12 months
         │           counted from when it was done
         │           coming up within 14 days
         │           test.due:11:28
         └─ When this is so
            │  test.due:14:3
            └─ All of these
               │  test.due:14:8
               ├─ The coolant gauge reads above 90 °C
               │     test.due:14:8
               └─ Not
                  │  test.due:14:33
                  └─ The coolant gauge reads above 110 °C
                        test.due:14:37"
    `);
  });

  test('are drawn in ASCII where they have to be', () => {
    expect(renderRuleGraphText(graph, 'oil', plainStyle(80, false)).replaceAll('°', ' ')).toMatch(/^[\x20-\x7e\n]*$/);
  });

  test.each([40, 60, 100])('keep to %i columns', (width) => {
    for (const line of renderRuleGraphText(graph, 'oil', plainStyle(width)).split('\n')) expect(columns(line)).toBeLessThanOrEqual(width);
  });

  test('of a task that is not there are an error of the caller', () => {
    expect(() => renderRuleGraphText(graph, 'nothing', plainStyle())).toThrow(RangeError);
  });
});

describe('the rules of a task as a page', () => {
  const page = renderRuleGraphHtml(graph, 'oil');

  test('stand alone: no script, nothing from elsewhere', () => {
    expect(page).not.toMatch(/<script|<link|<img|@import|url\(http|(?:src|href)=/);
    expect(page.match(/https?:\/\/[^"\s]+/g)).toEqual(['http://www.w3.org/2000/svg']);
  });

  test('say in words all that is drawn', () => {
    const words = page.slice(page.indexOf('In words'));
    for (const [, text = ''] of page.matchAll(/<text class="line"[^>]*>([^<]*)<\/text>/g)) {
      for (const word of text.split(' ')) expect(words).toContain(word);
    }
    expect(page).toMatch(/role="img" aria-labelledby="drawing-title drawing-desc"/);
  });

  test('keep the order in which the author wrote them', () => {
    const heights = ['Every 100 h of engine', 'Every 12 months'].map((text) => Number(new RegExp(`y="([\\d.]+)">${text}`).exec(page)?.[1]));
    expect(heights[0]).toBeLessThan(heights[1] ?? 0);
  });

  test('do not let a title into the markup', () => {
    const hostile = renderRuleGraphHtml(graph, 'level');
    expect(hostile).toContain('Check the level &lt;now&gt;');
    expect(hostile).not.toContain('<now>');
  });

  test('are the same bytes each time', () => {
    expect(renderRuleGraphHtml(graph, 'oil')).toBe(page);
  });
});
