import type { Evidence } from '../../server/mechanics/assessment/evidence.ts';
import { defaultOf, LIMIT_NAMES } from '../../server/records/limits/known-limits.ts';
import type { BuildRecord } from '../../server/records/whole-build/build-record.ts';
import { answersOf, callOf, events } from './record/calls.ts';
import { family, handParts, partReadings } from './record/parts.ts';
import { passes, setUpOf } from './record/set-ups.ts';
import { specOf } from './record/spec.ts';
import { AT, WHO } from './record/stored.ts';
import { gapScans, lashLines, sheetReadings, tipMarks } from './record/valves.ts';
import { workings } from './record/workings.ts';

/*
 * A stored record that says what this evidence says, made without a database: generated builds can be shown on
 * every page by it. The way back, from the record to the evidence, is the service's own.
 */

export { callOf };

export function recordOf(evidence: Evidence): BuildRecord {
  const spec = specOf(evidence);
  return {
    build: {
      id: 'build',
      label: 'Generated build',
      revision: 1,
      version: 1_000,
      units: evidence.call.units ?? 'inch',
      spec,
      createdAt: AT,
    },
    calls: [callOf(evidence)],
    told: [callOf(evidence)],
    revisions: [{ revision: 1, spec, reason: 'as told', by: WHO.by, at: AT }],
    arms: evidence.arms.map((arm) => ({ ...arm, family: '', by: WHO.by, at: AT })),
    placements: evidence.seats.map((seat, index) => ({
      ...seat,
      id: `seat-${index}`,
      reason: 'as told',
      seq: index + 1,
      by: WHO.by,
      at: AT,
    })),
    setUps: evidence.setUps.map((setUp) => setUpOf(setUp, evidence.statements)),
    readings: passes(evidence),
    sheetReadings: sheetReadings(evidence),
    gapScans: gapScans(evidence),
    handParts: handParts(evidence),
    partReadings: partReadings(evidence),
    tipMarks: tipMarks(evidence),
    lashLines: lashLines(evidence),
    answers: answersOf(evidence),
    workings: workings(evidence),
    photographs: [],
    notes: [],
    shareLinks: [],
    events: events(evidence),
    limits: new Map(LIMIT_NAMES.map((name) => [name, defaultOf(name)])),
    catalogueRatios: evidence.catalogueRatios,
    catalogue: (evidence.families ?? []).map(family),
  };
}
