import { GAP_KINDS, SHEET_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { NotToRun } from '../assessment.ts';
import { gapSaid } from '../common/gap-said.ts';
import { byId, inches, placeOf, valveSubject } from '../common/said.ts';
import { STRUCK_BY_DESK } from '../common/way-out.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';
import { type JudgedGap, judgeGap } from './gap.ts';
import { worstOf } from './worst.ts';

const isOfGap = (entry: SheetEvidence): entry is JudgedGap['entry'] =>
  GAP_KINDS.some((kind) => kind === entry.kind);

/** Gaps that were read short with the arms before: whatever is planned, nobody runs it with those. */
export function shortBefore(evidence: Evidence): NotToRun[] {
  const entries = evidence.sheet
    .filter(({ standing, arms }) => standing && arms === 'before')
    .filter(isOfGap)
    .toSorted(byId);
  const groups = [...new Set(entries.map((entry) => `${placeOf(entry)} ${entry.kind}`))].sort();
  return groups.flatMap((group): NotToRun[] => {
    const own = entries.filter((entry) => `${placeOf(entry)} ${entry.kind}` === group);
    const worst = worstOf(own.map((entry) => judgeGap(entry, evidence)));
    if (worst?.word !== 'short') return [];
    const { entry, gap, limit } = worst;
    const wrong = entry.scan?.needs.find(({ code }) => code === 'scan-wrong');
    return [
      {
        id: `not-to-run:before:${entry.kind}:${entry.id}`,
        what: 'run',
        about: valveSubject(entry),
        sentence: `Do not run it with the arms before: with them ${SHEET_KINDS[entry.kind].toLowerCase()} on ${placeOf(entry)} was read short, ${gapSaid(gap)} against ${inches(limit.value)}.`,
        // What was found written wrong is put right before anything is done about it.
        ...(wrong === undefined ? { saidFirst: true as const } : {}),
        wayOut: `While they are on, a qualified shop looks before it runs. ${STRUCK_BY_DESK}`,
        wayOutAtBench: 'While they are on, have a qualified shop look before it runs.',
      },
    ];
  });
}
