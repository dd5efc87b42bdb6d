export type LinkState = 'open' | 'ended' | 'closed';

const isState = (text: string): text is LinkState => ['open', 'ended', 'closed'].includes(text);

/** What a page of the builder knows of itself; undefined on every other page. */
export interface Bench {
  /** Undefined where the page can't tell: no such step, or the link has ended. */
  readonly link: string | undefined;
  /** The build that the link opens. */
  readonly build: string | undefined;
  /** Whether it is open in this browser, has ended, or was never opened here. */
  readonly state: LinkState;
  /** When this page was made, where it comes from what is kept on this device. */
  readonly keptAt: Date | undefined;
  /** Where the worker is that keeps pages. */
  readonly worker: string | undefined;
}

export function benchOf({ dataset }: HTMLElement): Bench | undefined {
  if (dataset.bench === undefined || !isState(dataset.bench)) return undefined;
  return {
    link: dataset.link,
    build: dataset.build,
    state: dataset.bench,
    keptAt: dataset.kept === undefined ? undefined : new Date(dataset.kept),
    worker: dataset.worker,
  };
}
