import { z } from 'zod';
import { answer, type Fields } from '../../../shared/schemas/answer.ts';
import { moment, valveView } from '../../../shared/schemas/answer-parts.ts';
import { MAY_BE_UNKNOWN, method } from '../../../shared/schemas/method.ts';
import type { SetUp } from './set-ups.ts';
import type { SetUpFacts, SetUpStatement } from './statements.ts';

const factsShape = { cylinder: z.int(), valve: valveView, armId: z.uuid().optional(), method };
const factsView = z.object(factsShape);

const factsOf = ({ cylinder, valve, armId, method: how }: SetUpFacts): Fields<typeof factsView> => ({
  cylinder,
  valve,
  armId,
  method: how,
});

const statementView = z
  .object({
    id: z.uuid(),
    seq: z.int(),
    cylinder: z.int().optional(),
    valve: valveView.optional(),
    armId: z.uuid().optional(),
    method: method.partial().optional(),
    notKnown: z.array(z.enum(MAY_BE_UNKNOWN)).optional(),
    struck: z.literal(true).optional(),
    reason: z.string(),
    by: z.string(),
    byKind: z.string(),
    at: moment,
  })
  .meta({ id: 'SetUpCorrection', description: 'what was put right of a set-up: only what was said then' });

const showStatement = ({ said, ...statement }: SetUpStatement) =>
  answer(statementView, {
    id: statement.id,
    seq: statement.seq,
    cylinder: said.cylinder,
    valve: said.valve,
    armId: said.armId,
    method: said.method,
    notKnown: said.notKnown,
    struck: said.struck,
    reason: statement.reason,
    by: statement.by,
    byKind: statement.byKind,
    at: statement.at.toISOString(),
  });

export const setUpView = z
  .object({
    id: z.uuid(),
    buildId: z.uuid(),
    number: z.int(),
    revision: z.int(),
    ...factsShape,
    started: factsView.meta({ description: 'as it was said before the first reading' }),
    struck: z.boolean().meta({ description: 'it was begun by mistake, and struck out' }),
    corrections: z.array(statementView).meta({ description: 'what was put right since, in order' }),
    by: z.string(),
    at: moment,
  })
  .meta({
    id: 'SetUp',
    description: 'valve, arm and method as they stand now, and as they were said at first',
  });

export const showSetUp = (setUp: SetUp) =>
  answer(setUpView, {
    id: setUp.id,
    buildId: setUp.buildId,
    number: setUp.number,
    revision: setUp.revision,
    ...factsOf(setUp),
    started: factsOf(setUp.started),
    struck: setUp.struck,
    corrections: setUp.statements.map(showStatement),
    by: setUp.by,
    at: setUp.at.toISOString(),
  });
