import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { encoded } from '../../compute/encode.ts';
import { computation as ratioAtFullLift } from '../../mechanics/computations/ratio-at-full-lift.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { type SetUpRatio, setUpRatio } from './ratio.ts';

const questionView = z.object({
  code: z.string(),
  weight: z.enum(['strong', 'weak']),
  ask: z.string(),
  size: z.string(),
  test: z.string(),
  restsOn: z.array(z.string()),
});

/** The ratio as JSON has it; `quantity` names which of the two ratios it is. */
export const ratioView = z
  .object({
    setUpId: z.uuid(),
    revision: z.int(),
    quantity: z.enum(['light-spring ratio', 'running-spring ratio', 'not known']),
    result: ratioAtFullLift.output.optional(),
    missing: z.array(z.string()),
    questions: z.array(questionView),
    assumptions: z.array(z.string()),
    cautions: z.array(z.string()),
    restsOn: z.array(z.object({ readingId: z.uuid(), kind: z.string(), pass: z.int(), readAs: z.string() })),
  })
  .meta({ id: 'Ratio' });

export const QUANTITY = {
  light: 'light-spring ratio',
  running: 'running-spring ratio',
  'not-said': 'not known',
} as const;

export const showRatio = (found: SetUpRatio) =>
  answer(ratioView, {
    setUpId: found.setUp.id,
    revision: found.setUp.revision,
    quantity: QUANTITY[found.setUp.method.spring],
    result: found.result === undefined ? undefined : encoded(ratioAtFullLift.output, found.result, 'inch'),
    missing: found.missing,
    questions: found.questions,
    assumptions: found.assumptions,
    cautions: found.cautions,
    restsOn: found.rests.map((reading) => ({
      readingId: reading.id,
      kind: reading.kind,
      pass: reading.pass,
      readAs: reading.peak.readAs,
    })),
  });

export const ratioOfSetUp = (record: BuildRecord, setUpId: string) => showRatio(setUpRatio(record, setUpId));
