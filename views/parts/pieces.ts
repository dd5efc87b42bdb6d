import type { Components } from './components.ts';
import type { PossibleReadings } from './field.examples.ts';
import type { BuilderFrame, DeskFrame, PlainFrame, ReportFrame } from './frames.ts';
import type { ScaleData } from './result.examples.ts';
import type { CellInput } from './table.examples.ts';

type MarkName =
  | 'agrees'
  | 'cannot-tell'
  | 'differs'
  | 'clear'
  | 'close'
  | 'short'
  | 'reading'
  | 'result'
  | 'question'
  | 'answer'
  | 'promise'
  | 'hold'
  | 'note'
  | 'caution'
  | 'wrong'
  | 'missing'
  | 'have';

/** Every template that another may include: the components, the frames of pages, and pieces of a component. */
export interface Pieces extends Components {
  readonly '/parts/cell-input': CellInput;
  readonly '/parts/asks': PossibleReadings;
  readonly '/parts/frame-builder': BuilderFrame;
  readonly '/parts/frame-desk': DeskFrame;
  readonly '/parts/frame-plain': PlainFrame;
  readonly '/parts/frame-report': ReportFrame;
  readonly '/parts/mark': { readonly name: MarkName };
  readonly '/parts/scale': ScaleData;
}

export type PieceName = keyof Pieces;
