/**
 * Chevrotain's own look-ahead, worked out for a choice when it is first met instead of for all choices at once: most texts
 * meet few of them, and the first parse in a process is the one that people wait for.
 */
import { LLkLookaheadStrategy, type ILookaheadStrategy } from 'chevrotain';

type Optional = ILookaheadStrategy['buildLookaheadForOptional'];
type Alternation = ILookaheadStrategy['buildLookaheadForAlternation'];

/** One token of look-ahead; where the grammar needs more, it has gates. */
export class LazyLookahead extends LLkLookaheadStrategy {
  constructor() {
    super({ maxLookahead: 1 });
  }

  override buildLookaheadForOptional(options: Parameters<Optional>[0]): ReturnType<Optional> {
    const build = () => super.buildLookaheadForOptional(options);
    let built: ReturnType<Optional> | undefined;
    return function (this: ThisParameterType<ReturnType<Optional>>) {
      built ??= build();
      return built.call(this);
    };
  }

  override buildLookaheadForAlternation(options: Parameters<Alternation>[0]): ReturnType<Alternation> {
    const build = () => super.buildLookaheadForAlternation(options);
    let built: ReturnType<Alternation> | undefined;
    return function (this: ThisParameterType<ReturnType<Alternation>>, alternatives) {
      built ??= build();
      return built.call(this, alternatives);
    };
  }
}
