import type { TrueCall } from '../mechanics/explain-readings/simulated-call.ts';

/** How a set-up is read, as the caller knows it. */
export interface State {
  readonly cylinder: number;
  readonly spring: 'light' | 'running';
  readonly lifter: 'solid' | 'hydraulic';
  readonly lash: 'zero' | 'set' | 'not-said';
  /** Inches. */
  readonly lashSetting?: number;
  readonly alignment: 'parallel' | 'not-said';
}

/**
 * When it is told: before the readings; after them, by statements or by the answers to questions; or wrongly at first
 * and put right after them.
 */
export type Telling = 'at-once' | 'late' | 'by-answers' | 'wrong-first';

/** What is the same for all, whenever the rest is told. */
const METHOD = {
  restsOn: 'retainer-flat',
  graduation: '.001 in',
  perTurn: '.100 in',
  errorLimit: '.0025 in',
  lobeSource: 'card',
  lobeErrorLimit: '.0025 in',
};

export const inch = (value: number): string => `${value.toFixed(3)} in`;

const settingOf = ({ lashSetting }: Pick<State, 'lashSetting'>) =>
  lashSetting === undefined ? {} : { lashSetting: inch(lashSetting) };

const said = (state: State): object => {
  const { spring, lifter, lash, alignment } = state;
  return { spring, lifter, lash, alignment, ...settingOf(state) };
};

const wrong = ({ spring, lifter, lash, alignment }: State): object => ({
  spring: spring === 'light' ? 'running' : 'light',
  lifter: lifter === 'solid' ? 'hydraulic' : 'solid',
  ...(lash === 'zero' ? { lash: 'set', lashSetting: '.010 in' } : { lash: 'zero' }),
  alignment: alignment === 'parallel' ? 'leaning' : 'parallel',
});

/** The method as it is said when the set-up is started. */
export function methodAtFirst(state: State, telling: Telling): object {
  const unsaid = { spring: 'not-said', lifter: 'not-said', lash: 'not-said' };
  switch (telling) {
    case 'at-once':
      return { ...METHOD, ...said(state) };
    case 'late':
      return { ...METHOD, ...unsaid, alignment: 'not-said' };
    case 'by-answers':
      // How the plunger stands is asked only where it matters.
      return { ...METHOD, ...unsaid, alignment: state.alignment };
    case 'wrong-first':
      return { ...METHOD, ...wrong(state) };
  }
}

/** The same, as it is put right later. */
export const putRight = (state: State): object => ({
  method: said(state),
  ...(state.lashSetting === undefined ? { notKnown: ['lashSetting'] } : {}),
});

/** What the answer to a question of a set-up says of it; nothing where the caller does not know. */
export function answerOf(code: string, state: State): object | undefined {
  switch (code) {
    case 'spring-not-said':
      return { answer: state.spring };
    case 'lifter-not-said':
      return { answer: state.lifter };
    case 'lash-not-said':
      return state.lash === 'not-said'
        ? undefined
        : {
            answer: state.lash,
            ...(state.lashSetting === undefined ? {} : { value: inch(state.lashSetting) }),
          };
    default:
      return undefined;
  }
}

/** The state that the first readings are taken in. A caller who says how much lash was in it says so where it was. */
export function firstState(
  { said: { lash }, spring, lifter, ...call }: TrueCall,
  tellsSetting: boolean,
): State {
  const common = { cylinder: 1, spring, lifter, alignment: 'not-said' } as const;
  if (lash === 'zero') return { ...common, lash };
  return tellsSetting && call.mistakes.has('lash-left-in')
    ? { ...common, lash: 'set', lashSetting: Math.round(call.lash * 1000) / 1000 }
    : { ...common, lash: 'not-said' };
}
