import { defined } from '../../../../shared/defined.ts';
import { InputFaults } from '../../../../shared/problems/faults.ts';
import { explainReadings } from '../../explain-readings/explain.ts';
import { toExplainOutput } from '../../explain-readings/json-output.ts';
import type { Cause, ExplainInput } from '../../explain-readings/types.ts';
import { IN } from '../../kit/si.ts';
import { nominalSaid } from '../common/said.ts';
import type { Evidence } from '../evidence.ts';
import type { ExplanationResult } from '../ratio/explanation.ts';
import { toldOf } from '../ratio/names.ts';
import { nominalsOf } from '../ratio/nominals.ts';
import type { Level } from './side-level.ts';

/** Mistakes of one reading: a whole side that reads alike did not make them. */
const OF_ONE: readonly Cause[] = [
  'turn-too-many',
  'turn-too-few',
  'hand-read-backwards',
  'slip',
  'wrong-valve',
  'passes-scatter',
];

const inch = (si: number | undefined): number | undefined =>
  si === undefined || si <= 0 ? undefined : si / IN;

/** The middle valve over the middle lobe, once: what all of them share does not get less by their number. */
function middleValve(evidence: Evidence, { side, lifts, lobeRead }: Level, ratio: number): ExplainInput {
  const given = { pass: 1, setUp: 0, spring: 'light', lifter: 'solid' } as const;
  return {
    nominals: nominalsOf(evidence),
    readings: [
      ...(lobeRead ? [{ ...given, of: 'lobe-lift' as const, value: lifts / ratio / IN }] : []),
      { ...given, of: 'valve-lift', value: lifts / IN, counted: true },
    ],
    ruledOut: OF_ONE,
    ...defined({
      cardLobeLift: inch(evidence.card[side].lobeLift),
      otherLobeLift: inch(evidence.card[side === 'intake' ? 'exhaust' : 'intake'].lobeLift),
    }),
  };
}

function weighed(input: ExplainInput): ExplanationResult | undefined {
  try {
    return toExplainOutput(explainReadings(input));
  } catch (error) {
    // Figures that no reading can have are asked about where they stand.
    if (error instanceof InputFaults) return undefined;
    throw error;
  }
}

/**
 * What a whole side that reads alike may be a set of; nothing where they are held to be something, where a lifter may
 * sink or the lash was left in, or where no name is likely enough to be told. Where nobody said how the lash was, the
 * name is told on that condition, and without a chance, which would be heard as what was read.
 */
export function nameOfSide(evidence: Evidence, level: Level): string {
  const { spring, ratio, claim, sinks, lash } = level;
  const { gear = 'pushrod' } = evidence.engine;
  if (ratio === undefined || claim !== undefined || spring !== 'light' || gear !== 'pushrod') return '';
  if (sinks || lash === 'set') return '';
  const result = weighed(middleValve(evidence, level, ratio.value));
  const told = result === undefined ? [] : toldOf(result, ratio);
  if (told.length === 0) return '';
  const names = told.map((each) => `of ${nominalSaid(each.ratio)} arms`);
  return `: ${lash === 'zero' ? '' : 'with the lash out, '}a set ${names.join(', or ')}${names.length > 1 ? '; the part number tells which' : ''}`;
}
