import { z } from 'zod';
import { answer } from '../../../shared/schemas/answer.ts';
import { moment } from '../../../shared/schemas/answer-parts.ts';
import type { Arm } from './arms.ts';
import type { Placement } from './placements.ts';

export const armView = z
  .object({
    id: z.uuid(),
    name: z.string(),
    family: z.string(),
    ratioStamp: z.string(),
    otherNumber: z.string(),
    boxLabel: z.string(),
    by: z.string(),
    at: moment,
  })
  .meta({ id: 'Arm' });

export const showArm = (arm: Arm) =>
  answer(armView, {
    id: arm.id,
    name: arm.name,
    family: arm.family,
    ratioStamp: arm.ratioStamp,
    otherNumber: arm.otherNumber,
    boxLabel: arm.boxLabel,
    by: arm.by,
    at: arm.at.toISOString(),
  });

export const placementView = z
  .object({
    id: z.uuid(),
    armId: z.uuid(),
    cylinder: z.int(),
    valve: z.string(),
    reason: z.string(),
    seq: z.int(),
    by: z.string(),
    at: moment,
  })
  .meta({ id: 'Placement' });

export const showPlacement = (placement: Placement) =>
  answer(placementView, {
    id: placement.id,
    armId: placement.armId,
    cylinder: placement.cylinder,
    valve: placement.valve,
    reason: placement.reason,
    seq: placement.seq,
    by: placement.by,
    at: placement.at.toISOString(),
  });
