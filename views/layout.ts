/** A place of the main navigation. */
export interface NavPlace {
  readonly href: string;
  readonly label: string;
  readonly current: boolean;
}

/** What the script of a page needs that is kept as the other side sees it. */
export interface LivePage {
  /** Where its stream of events is. */
  readonly href: string;
  readonly steps: string;
  readonly step: string;
  /** The build's last sequence number when the page was made, and whether a stop stood then. */
  readonly seq: number;
  readonly stopped: boolean;
  /** Who looks at it. */
  readonly self: string;
  /** The address of what of the step is shown: it stays while somebody is at a form of it. */
  readonly at?: string;
  /** The field that what is next is entered in: at the desk it has the focus. */
  readonly nextField?: string;
  /** The step's own address, for a page that can't be fetched again. */
  readonly beside?: string;
}

/** What a page of the builder needs to go on without a signal. */
export interface BenchPage {
  /** `ended` where the link opens nothing any more, `closed` where none was opened in this browser. */
  readonly state: 'open' | 'ended' | 'closed';
  /** The id of the link; left out where the page can't tell. */
  readonly link?: string;
  /** The build that it opens. */
  readonly build?: string;
  /** The desk's number, where it is set. */
  readonly phone?: string;
  readonly workerHref: string;
  readonly manifestHref: string;
  readonly touchIconHref: string;
}

/** What stands round every page. */
export interface LayoutFrame {
  readonly title: string;
  /** Where the skip link goes, on this kind of page: `Skip to the step`. */
  readonly skip: string;
  readonly side?: 'desk' | 'builder' | 'open';
  readonly nav?: readonly NavPlace[];
  readonly signedIn?: { readonly name: string; readonly accountHref?: string | undefined } | undefined;
  readonly styleHref?: string;
  readonly iconHref?: string;
  /** With the nonce that the page's policy names. */
  readonly script?: { readonly href: string; readonly nonce: string };
  readonly live?: LivePage;
  readonly bench?: BenchPage;
  /** The person has turned the single keys off. */
  readonly keysOff?: boolean;
}

/** What `layout.eta` reads: the frame, and the page that was rendered. */
export interface LayoutData {
  readonly frame: LayoutFrame;
  readonly body: string;
}
