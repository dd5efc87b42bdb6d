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

interface Known<Answer> {
  readonly answer: Answer;
}

/** What was worked out of each thing while this assessment is made. */
function knownNow<Of extends object, Kept>(): () => WeakMap<Of, Kept> {
  let madeIn = making;
  let made = new WeakMap<Of, Kept>();
  return () => {
    if (madeIn !== making) {
      madeIn = making;
      made = new WeakMap();
    }
    return made;
  };
}

/** Works it out once for each thing that it is worked out of. */
export function once<Of extends object, Answer>(work: (of: Of) => Answer): (of: Of) => Answer {
  const known = knownNow<Of, Known<Answer>>();
  return (of) => {
    if (making === undefined) return work(of);
    const found = known().get(of);
    if (found !== undefined) return found.answer;
    const answer = work(of);
    known().set(of, { answer });
    return answer;
  };
}

/** The key of what is known by itself. */
export const asItIs = <Each>(each: Each): Each => each;

/** Works it out once for each pair of what it is worked out of and of what `keyOf` makes of the rest. */
export function onceEach<Of extends object, Each, Answer>(
  keyOf: (each: Each) => unknown,
  work: (of: Of, each: Each) => Answer,
): (of: Of, each: Each) => Answer {
  const known = knownNow<Of, Map<unknown, Known<Answer>>>();
  return (of, each) => {
    if (making === undefined) return work(of, each);
    const own = known().get(of) ?? new Map<unknown, Known<Answer>>();
    const key = keyOf(each);
    const found = own.get(key);
    if (found !== undefined) return found.answer;
    const answer = work(of, each);
    own.set(key, { answer });
    known().set(of, own);
    return answer;
  };
}
