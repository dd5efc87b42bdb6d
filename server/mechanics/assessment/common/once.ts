/*
 * Much is asked of the same evidence again and again while one assessment is made. What is worked out of it then is kept
 * until the assessment is done, and no longer: in the next one the build may be another, and so may its units.
 */
let making: object | undefined;

/** Makes an assessment, in which what is marked so below is worked out once. */
export function makingOnce<T>(work: () => T): T {
  const before = making;
  making = {};
  try {
    return work();
  } finally {
    making = before;
  }
}

/** Works it out once for each pair of what it is worked out of and of what `keyOf` makes of the rest. */
export function onceEach<Of extends object, Each, Answer>(
  keyOf: (each: Each) => unknown,
  work: (of: Of, each: Each) => Answer,
): (of: Of, each: Each) => Answer {
  const made = new WeakMap<object, WeakMap<Of, Map<unknown, { readonly answer: Answer }>>>();
  return (of, each) => {
    if (making === undefined) return work(of, each);
    const now = made.get(making) ?? new WeakMap<Of, Map<unknown, { readonly answer: Answer }>>();
    made.set(making, now);
    const known = now.get(of) ?? new Map<unknown, { readonly answer: Answer }>();
    now.set(of, known);
    const key = keyOf(each);
    const found = known.get(key) ?? { answer: work(of, each) };
    known.set(key, found);
    return found.answer;
  };
}

/** The key of what is known by itself. */
export const asItIs = <Each>(each: Each): Each => each;

/** Works it out once for each thing that it is worked out of. */
export function once<Of extends object, Answer>(work: (of: Of) => Answer): (of: Of) => Answer {
  const each = onceEach<Of, undefined, Answer>(
    (none) => none,
    (of) => work(of),
  );
  return (of) => each(of, undefined);
}
