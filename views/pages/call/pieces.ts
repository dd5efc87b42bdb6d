import type { ButtonData } from '../../parts/button.examples.ts';
import type { Component } from '../../parts/components.ts';
import type { Fact } from '../../parts/facts.examples.ts';

/** What can be done with a call beside its steps. */
export interface CallLink {
  readonly href: string;
  readonly label: string;
  readonly key?: string;
}

interface Slots {
  readonly slots: readonly Component[];
}

/** What stands folded away under its summary. */
interface FoldData extends Slots {
  readonly id: string;
  readonly summary: string;
  readonly open?: boolean;
}

/** Components under a heading of their own. */
interface GroupData extends Slots {
  readonly title: string;
  readonly text?: string;
}

/** An answer in one sentence, and what it still needs. */
export interface HeadlineData {
  readonly sentence: string;
  /** What follows the answer in the same breath: as large as the text. */
  readonly rest?: string;
  readonly lacks?: readonly string[];
  /** It is the first answer of its page, and the largest sentence of it. */
  readonly lead?: boolean;
}

/** The parts of a step, side by side. */
interface PartLinks {
  readonly label: string;
  readonly parts: readonly (CallLink & { readonly current: boolean; readonly kept: boolean })[];
}

interface ListData {
  readonly title: string;
  readonly items: readonly string[];
}

/** A share link as text and as a QR code. */
interface LinkData {
  readonly link: string;
  readonly code: {
    readonly viewBox: string;
    /** Paths of the squares: the white ground and the dark ones. */
    readonly paper: string;
    readonly dark: string;
  };
}

/** The pieces that the pages of a call are made of, beside the parts that every page may use. */
export interface CallPieces {
  readonly '/pages/call/actions': { readonly buttons: readonly ButtonData[] };
  readonly '/pages/call/column': Slots;
  /** What is entered, and the drawing of how it is measured; a drawing gets the less of the width. */
  readonly '/pages/call/entry-beside': {
    readonly entry: readonly Component[];
    readonly beside: readonly Component[];
  };
  readonly '/pages/call/facts-group': { readonly title: string; readonly items: readonly Fact[] };
  readonly '/pages/call/fold': FoldData;
  readonly '/pages/call/group': GroupData;
  readonly '/pages/call/heading': { readonly text: string };
  readonly '/pages/call/headline': HeadlineData;
  readonly '/pages/call/link': LinkData;
  readonly '/pages/call/list': ListData;
  readonly '/pages/call/page-link': CallLink;
  readonly '/pages/call/pair': Slots;
  readonly '/pages/call/part-links': PartLinks;
  readonly '/pages/call/side-by-side': Slots;
}
