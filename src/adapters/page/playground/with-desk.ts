import { jsonBlock } from '../view/json-block.js';
import type { Desk } from './desk.js';

const BEGIN = '<script type="application/json" id="desk">';
const END = '</script>';

/** The files of a desk as the block of data that the page reads them from. */
export function deskBlock(desk: Desk): string {
  return BEGIN + jsonBlock(JSON.stringify(desk)) + END;
}

/**
 * A playground with other files on its desk; its scripts stay as they are, and so does its policy.
 *
 * @throws RangeError for a text that is no playground.
 */
export function withDesk(page: string, desk: Desk): string {
  const begin = page.indexOf(BEGIN);
  const end = page.indexOf(END, begin);
  if (begin < 0 || end < 0) throw new RangeError('the page has no desk');
  return page.slice(0, begin) + deskBlock(desk) + page.slice(end + END.length);
}
