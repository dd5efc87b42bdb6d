import type { Component } from '../parts/components.ts';
import type { DialData } from '../parts/dial.examples.ts';
import type { ErrorSummaryData } from '../parts/error-summary.examples.ts';
import type { BuilderFrame, PlainFrame, ReportFrame } from '../parts/frames.ts';
import type { MissingData } from '../parts/missing.examples.ts';
import type { AnyPart } from '../parts/part.ts';
import type { CallLink } from './call/pieces.ts';
import type {
  ApiPageData,
  ComputationPageData,
  ProblemPageData,
  ReferencePageData,
} from './reference/pages.ts';
import type { StopFlag } from './report/pieces.ts';

/** A step of a call, at the desk or at the bench. */
export interface CallPageData extends BuilderFrame {
  readonly errors: ErrorSummaryData['errors'];
  /** What the frame around the errors says, where nothing of it can be put right. */
  readonly errorTitle?: string;
  readonly side: 'desk' | 'bench';
  readonly links: readonly CallLink[];
  /** The form that stops the call; left out while it is stopped by a person. */
  readonly stop?: { readonly form: Component; readonly open: boolean };
  /** What is wanted less often, folded. */
  readonly more: { readonly summary: string; readonly links: readonly CallLink[] };
  /** One press for the units of the call. */
  readonly units: Component;
  readonly missing: MissingData;
}

interface CallsPageData {
  readonly search: string;
  readonly slots: readonly Component[];
}

interface ErrorPageData {
  /** What happened. */
  readonly title: string;
  readonly detail?: string;
  /** Whether there ever was such a page. */
  readonly ever?: string;
  readonly advice?: string;
  /** Whom to call; left out where nobody said a number. */
  readonly phone?: string;
  /** Left out where it would lead to this page again. */
  readonly home?: { readonly href: string; readonly label: string };
  /** As much of it as is read out. */
  readonly requestId: string;
}

/** A page of text and components, such as a page of settings. */
interface PlainPageData extends PlainFrame {
  readonly errors?: ErrorSummaryData['errors'];
}

interface ReportPageData extends ReportFrame {
  readonly back: string;
  /** The same sheet without its back pages, or with them. */
  readonly other: { readonly href: string; readonly label: string };
}

/** One line of a card of the takeover page. */
export interface CardItem {
  readonly text: string;
  readonly label?: string;
  readonly note?: string;
  readonly href?: string;
}

export interface Card {
  readonly title: string;
  readonly items: readonly CardItem[];
}

interface TakeoverPageData {
  readonly back: string;
  readonly title: string;
  readonly stop: StopFlag;
  readonly cards: readonly Card[];
}

interface WorksheetPageData {
  readonly stop: StopFlag;
  readonly back: string;
  readonly title: string;
  readonly about: string;
  /** How the desk is called; empty, a line to write it on. */
  readonly phone: string;
  /** Back to the build, as it is typed and as a code; on a sheet of the builder’s own. */
  readonly online?: {
    readonly address: string;
    readonly code: { readonly viewBox: string; readonly dark: string; readonly paper: string };
  };
  /** What the call still lacks. */
  readonly lacks: readonly string[];
  readonly valves: readonly string[];
  readonly choices: readonly { readonly label: string; readonly boxes: readonly string[] }[];
  readonly blanks: readonly string[];
  readonly passes: readonly string[];
  readonly dials: readonly DialData[];
}

/** Every page, by the name of its folder, with the data that it shows. */
export interface Pages {
  readonly call: CallPageData;
  readonly calls: CallsPageData;
  readonly error: ErrorPageData;
  readonly home: Readonly<Record<never, never>>;
  readonly plain: PlainPageData;
  readonly problem: ProblemPageData;
  readonly reference: ReferencePageData;
  readonly 'reference-api': ApiPageData;
  readonly 'reference-computation': ComputationPageData;
  readonly 'reference-parts': { readonly parts: readonly AnyPart[] };
  readonly report: ReportPageData;
  readonly takeover: TakeoverPageData;
  readonly worksheet: WorksheetPageData;
}

/** A page with its own data. A page that does not exist, or data of another one, does not compile. */
export type PageContent = {
  [Name in keyof Pages]: { readonly template: Name; readonly data: Pages[Name] };
}[keyof Pages];
