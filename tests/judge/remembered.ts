/**
 * Answers that are kept for as long as what they were about is there.
 *
 * Nothing that the judge asks of a world depends on anything but that world, which never changes: so a question that was answered once has
 * that answer. This saves time alone; every function means the same without it.
 */
export function remembered<World extends object, About extends string | number, Answer>(
  answer: (world: World, about: About) => Answer,
): (world: World, about: About) => Answer {
  const known = new WeakMap<World, Map<About, Answer>>();
  return (world, about) => {
    const answers = known.get(world) ?? new Map<About, Answer>();
    known.set(world, answers);
    const before = answers.get(about);
    if (before !== undefined) return before;
    const now = answer(world, about);
    answers.set(about, now);
    return now;
  };
}

/** The same, of something that is asked but one question. */
export function rememberedOf<Of extends object, Answer>(answer: (of: Of) => Answer): (of: Of) => Answer {
  const known = remembered<Of, '', { readonly answer: Answer }>((of) => ({ answer: answer(of) }));
  return (of) => known(of, '').answer;
}
