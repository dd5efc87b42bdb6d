/** One thing that is said in a call, as it goes over JSON. `$name` in its path or body is the id of what was kept under that name. */
export interface Entry {
  /** What others call it by. */
  readonly name?: string;
  readonly method: 'POST' | 'PUT';
  /** Below the call (`call/…`) or the build (`build/…`). */
  readonly path: string;
  readonly body: object;
  /** Names that must have been kept before, beside those its path and body use. */
  readonly after?: readonly string[];
  /** A part of the build's description: it is put into what is already there. */
  readonly describes?: boolean;
}

/** Nothing wrong with how it is read, with figures as they are typed: light spring, lobe from the card. */
export const METHOD = {
  spring: 'light',
  lifter: 'solid',
  lash: 'zero',
  restsOn: 'retainer-flat',
  alignment: 'parallel',
  graduation: '.001 in',
  perTurn: '.100 in',
  errorLimit: '.0025 in',
  lobeSource: 'card',
  lobeErrorLimit: '.0025 in',
};

export const asked = (contact: 'none' | 'something', engineState = 'apart'): Entry => ({
  method: 'PUT',
  path: 'call/triage',
  body: { engineState, contact },
});

export const described = (spec: object): Entry => ({
  method: 'PUT',
  path: 'build/spec',
  body: spec,
  describes: true,
});

/** A set-up on a valve, called `name`; what is not said is as in a careful reading. */
export const setUp = (
  name: string,
  { cylinder = 1, valve = 'intake', after = [], armId, ...method }: SetUpSaid = {},
): Entry => ({
  name,
  method: 'POST',
  path: 'build/set-ups',
  after,
  body: { cylinder, valve, ...(armId === undefined ? {} : { armId }), method: { ...METHOD, ...method } },
});

interface SetUpSaid {
  readonly cylinder?: number;
  readonly valve?: 'intake' | 'exhaust';
  readonly after?: readonly string[];
  readonly armId?: string;
  readonly [fact: string]: unknown;
}

/** Passes of a kind in a set-up, in the order they were read. */
export const passes = (
  on: string,
  kind: string,
  peaks: readonly string[],
  more: object = {},
): readonly Entry[] =>
  peaks.map((peak, at) => ({
    name: `${on} ${kind} ${at + 1}`,
    method: 'POST',
    path: `build/set-ups/$${on}/readings`,
    body: { kind, peak, pass: at + 1, ...more },
  }));

/** What is put right of a set-up that was kept otherwise. */
export const putRight = (on: string, said: object, after: readonly string[] = []): Entry => ({
  method: 'POST',
  path: `build/set-ups/$${on}/corrections`,
  body: { ...said, reason: 'asked again on the phone' },
  after,
});

export const arm = (name: string, marks: object = {}): Entry => ({
  name,
  method: 'POST',
  path: 'build/arms',
  body: { name, ...marks },
});

export const placed = (
  on: string,
  cylinder: number,
  valve = 'intake',
  after: readonly string[] = [],
): Entry => ({
  name: `${on} on ${cylinder} ${valve}`,
  method: 'POST',
  path: 'build/placements',
  body: { armId: `$${on}`, cylinder, valve },
  after,
});

export const answered = (
  code: string,
  found: boolean,
  { on, after = [], ...more }: { on?: string; after?: readonly string[]; [part: string]: unknown } = {},
): Entry => ({
  method: 'POST',
  path: 'build/answers',
  body: {
    question: code,
    code,
    answer: found ? 'found' : 'not found',
    found,
    ...(on === undefined ? {} : { setUpId: `$${on}` }),
    ...more,
  },
  after,
});

/** One of the answers that a question offers, by its word. */
export const chose = (
  code: string,
  answer: string,
  { on, ask = code, after = [] }: { on?: string; ask?: string; after?: readonly string[] } = {},
): Entry => ({
  method: 'POST',
  path: 'build/answers',
  body: { question: ask, code, answer, ...(on === undefined ? {} : { setUpId: `$${on}` }) },
  after,
});

export const onSheet = (readings: readonly object[], how: object = {}): Entry => ({
  method: 'POST',
  path: 'build/sheet',
  body: { spring: 'light', lifter: 'solid', tool: 'indicator', ...how, readings },
});

export const lashLine = (cylinder: number, lash: string, line: object = {}): Entry => ({
  method: 'POST',
  path: 'build/lash',
  body: { cylinder, valve: 'intake', lash, ...line },
});

export const ofPart = (kind: string, reading: object): Entry => ({
  method: 'POST',
  path: 'build/identification/readings',
  body: { kind, ...reading },
});

export const marked = (cylinder: number, mark: object): Entry => ({
  method: 'POST',
  path: 'build/tip-marks',
  body: { cylinder, valve: 'intake', ...mark },
});

/** A computation that was kept with the build. */
export const kept = (computation: string, inputs: object): Entry => ({
  method: 'POST',
  path: 'build/workings',
  body: { computation, inputs },
});
