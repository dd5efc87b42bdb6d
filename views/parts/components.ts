import type { CallPieces } from '../pages/call/pieces.ts';
import type { ReferencePieces } from '../pages/reference/pieces.ts';
import type { ReportPieces } from '../pages/report/pieces.ts';
import type { BarData } from './bar.examples.ts';
import type { ButtonData } from './button.examples.ts';
import type { CandidatesData } from './candidates.examples.ts';
import type { ChoiceData } from './choice.examples.ts';
import type { DialData } from './dial.examples.ts';
import type { DrawingData } from './drawing.examples.ts';
import type { EmptyData } from './empty.examples.ts';
import type { ErrorSummaryData } from './error-summary.examples.ts';
import type { FactsData } from './facts.examples.ts';
import type { FieldData } from './field.examples.ts';
import type { FileData } from './file.examples.ts';
import type { FormData } from './form.examples.ts';
import type { GapBarData } from './gap-bar.examples.ts';
import type { HoldData } from './hold.examples.ts';
import type { MissingData } from './missing.examples.ts';
import type { NoticeData } from './notice.examples.ts';
import type { OwnStopData } from './own-stop.examples.ts';
import type { PagerData } from './pager.examples.ts';
import type { PhotographsData } from './photographs.examples.ts';
import type { QuestionData } from './question.examples.ts';
import type { ResultData } from './result.examples.ts';
import type { SelectData } from './select.examples.ts';
import type { StatusLineData } from './status-line.examples.ts';
import type { StepHeaderData } from './step-header.examples.ts';
import type { TableData } from './table.examples.ts';
import type { TagData } from './tag.examples.ts';
import type { TapeData } from './tape.examples.ts';
import type { TapeLineData } from './tape-line.examples.ts';
import type { TextareaData } from './textarea.examples.ts';
import type { UnsentData } from './unsent.examples.ts';
import type { VerdictData } from './verdict.examples.ts';

/** Every template that can be set into a page or into another component, with the data that it shows. */
export interface Components extends CallPieces, ReferencePieces, ReportPieces {
  readonly '/parts/bar': BarData;
  readonly '/parts/button': ButtonData;
  readonly '/parts/candidates': CandidatesData;
  readonly '/parts/choice': ChoiceData;
  readonly '/parts/dial': DialData;
  readonly '/parts/drawing': DrawingData;
  readonly '/parts/empty': EmptyData;
  readonly '/parts/error-summary': ErrorSummaryData;
  readonly '/parts/facts': FactsData;
  readonly '/parts/field': FieldData;
  readonly '/parts/file': FileData;
  readonly '/parts/form': FormData;
  readonly '/parts/gap-bar': GapBarData;
  readonly '/parts/hold': HoldData;
  readonly '/parts/missing': MissingData;
  readonly '/parts/notice': NoticeData;
  readonly '/parts/pager': PagerData;
  readonly '/parts/photographs': PhotographsData;
  readonly '/parts/question': QuestionData;
  readonly '/parts/result': ResultData;
  readonly '/parts/select': SelectData;
  readonly '/parts/status-line': StatusLineData;
  readonly '/parts/step-header': StepHeaderData;
  readonly '/parts/table': TableData;
  readonly '/parts/tag': TagData;
  readonly '/parts/tape': TapeData;
  readonly '/parts/tape-line': TapeLineData;
  readonly '/parts/textarea': TextareaData;
  readonly '/parts/own-stop': OwnStopData;
  readonly '/parts/unsent': UnsentData;
  readonly '/parts/verdict': VerdictData;
}

export type ComponentName = keyof Components;

/** A component of one template, such as `ComponentOf<'/parts/table'>`. */
export interface ComponentOf<Name extends ComponentName> {
  readonly template: Name;
  readonly data: Components[Name];
}

/** A template with its own data. A template that does not exist, or data of another one, does not compile. */
export type Component = { [Name in ComponentName]: ComponentOf<Name> }[ComponentName];
