import { isPartFitting } from '../../../shared/schemas/part-words.ts';
import type { Drawing } from '../../drawings/drawing.ts';
import { partDrawing } from '../../drawings/part.ts';
import { fittingDrawing } from '../../drawings/part-fitting.ts';
import type { AskedKind } from './asked-now.ts';

/** Where the tool goes for what is asked. */
export const askedDrawing = (id: string, asked: AskedKind): Drawing =>
  isPartFitting(asked) ? fittingDrawing(id, asked) : partDrawing(id, asked);
