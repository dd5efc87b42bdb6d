import { type Bench, benchOf } from './unsent/bench.ts';
import { askedToChange, goOnChanging } from './unsent/changing.ts';
import { keepDrafts } from './unsent/drafts.ts';
import { onEnded, shutEntry, tellEnded } from './unsent/ended.ts';
import { isKeeping, renewKey } from './unsent/form.ts';
import { fillNote } from './unsent/into-note.ts';
import { heardFrom, keepSending } from './unsent/keep-sending.ts';
import { askForWaking, forgetPages, keepPages } from './unsent/kept-pages.ts';
import { learnFromPage, newerStop, showKnownStop, showsLifted } from './unsent/known-stop.ts';
import { copyOf, keepBelowStop, type Markup, markupHere } from './unsent/markup.ts';
import { forgetNumbers, numberPasses } from './unsent/next-pass.ts';
import { knownStopBox, ownStopBox, showOwnStop } from './unsent/own-stop.ts';
import type { Outcome } from './unsent/post.ts';
import { releaseLeft } from './unsent/release.ts';
import { holdScreens } from './unsent/screens.ts';
import { SEND_NOW } from './unsent/send-again.ts';
import { showOnTape, showUnsent, wordsOfAll } from './unsent/show.ts';
import { hasSignal, onSignal, tellSignal } from './unsent/signal.ts';
import { allEntries, changeEntry, deleteEntry, type Entry } from './unsent/store.ts';
import { keepInSight } from './unsent/strip.ts';
import { sendByScript } from './unsent/submit.ts';
import { onOthers, STOP_SAID } from './unsent/tell.ts';

const FILE_STAYS =
  'Not sent: no signal. The picture is still chosen here; press again when the signal is back. Leaving this page drops it.';

/** Beside the button, where whoever pressed it looks. */
function sayAt(form: HTMLFormElement, text: string): void {
  const made = form.querySelector<HTMLElement>('.form-told') ?? document.createElement('p');
  made.className = 'form-told field-error';
  made.setAttribute('role', 'status');
  form.querySelector('.form-buttons')?.after(made);
  made.textContent = text;
}

function say(text: string): void {
  const status = document.querySelector('#status');
  if (status !== null) status.textContent = text;
}

/** What was refused under the eyes of the person is in its form again; where that page never came it is not lost. */
async function settleHanded(entries: readonly Entry[]): Promise<void> {
  const answersForm = document.querySelector<HTMLElement>('main')?.dataset.beside !== undefined;
  for (const { id, state } of entries) {
    if (state !== 'handed') continue;
    if (answersForm) await deleteEntry(id);
    else await changeEntry(id, { state: 'refused' });
  }
}

/** Shows what waits, and shows it again whenever that changes. */
function painter(made: Markup, bench: Bench) {
  const section = copyOf(made.section);
  section.hidden = true;
  const stop = ownStopBox(made);
  const knownBox = knownStopBox(made);
  const strip = copyOf(made.strip);
  strip.hidden = true;
  document.querySelector('#main')?.before(strip, stop, knownBox, section);
  const sight = keepInSight(section, strip);
  const now = { state: bench.state, sending: false };
  let entries: readonly Entry[] = [];
  async function paint(): Promise<void> {
    entries = await allEntries().catch(() => []);
    const known = await newerStop(bench.link, bench.keptAt !== undefined);
    showKnownStop(knownBox, known);
    showOwnStop(stop, entries, bench, known);
    const standing = { ...now, signal: hasSignal(), lifted: showsLifted(known) };
    showUnsent(section, made, entries, bench, standing, again);
    keepBelowStop(section, known !== undefined);
    sight.show(section.querySelector('.unsent-title')?.textContent ?? '');
    numberPasses(entries.filter(({ link }) => link === bench.link));
    showOnTape(made, entries, bench, now.state);
  }
  function again(): void {
    void paint();
  }
  section.querySelector('button[data-do=copy]')?.addEventListener('click', () => {
    navigator.clipboard.writeText(wordsOfAll(entries)).then(
      () => say('Copied.'),
      () => say('This browser does not copy: mark the words and copy them by hand.'),
    );
  });
  return { now, again };
}

/**
 * The builder's phone without a signal: pages that were kept open, entries that were made wait and go out once each,
 * in order. On every other page there is nothing to do.
 */
export function goOnWithoutSignal(): void {
  const bench = benchOf(document.documentElement);
  const made = markupHere();
  if (bench === undefined || made === undefined) return;
  const { now, again } = painter(made, bench);
  // A page that comes from this device came without a signal, whatever the browser thinks of the line.
  if (bench.keptAt !== undefined) tellSignal(false);
  onSignal(again);
  onOthers(again);
  keepStopInMind(bench, again);
  document.addEventListener(STOP_SAID, again);
  again();
  const { link } = bench;
  onEnded(() => {
    now.state = 'ended';
    shutEntry();
    void forgetPages();
    again();
  });
  if (bench.state === 'ended') void forgetPages();
  if (link !== undefined) startSending(link, now, again);
  if (link !== undefined && bench.worker !== undefined)
    // A browser may refuse to keep pages; the page works all the same.
    keepPages(bench.worker).catch(() => undefined);
}

/** What this page says of the stop is kept for those of the link that were made before it, and again as it changes. */
function keepStopInMind({ link, keptAt }: Bench, again: () => void): void {
  const learn = (at: number) => {
    const learned = link === undefined ? Promise.resolve() : learnFromPage(link, at);
    learned.then(again, again);
  };
  document.addEventListener('page-merged', () => {
    forgetNumbers();
    learn(Date.now());
  });
  addEventListener('pageshow', again);
  learn((keptAt ?? new Date()).getTime());
}

function startSending(link: string, now: { sending: boolean }, again: () => void): void {
  for (const form of document.forms) if (isKeeping(form)) renewKey(form);
  function took(outcome: Outcome | undefined): void {
    if (outcome?.kind === 'ended') tellEnded();
  }
  fillNote();
  holdScreens(sayAt);
  try {
    keepDrafts(link);
  } catch {
    // A browser that keeps nothing keeps no drafts either.
  }
  const sending = keepSending(link, {
    before() {
      now.sending = true;
      again();
    },
    after({ stopped }) {
      now.sending = false;
      took(stopped);
      again();
    },
  });
  document.addEventListener(SEND_NOW, () => {
    again();
    sending.now();
  });
  sendByScript(link, (outcome, file, form) => {
    took(outcome);
    if (outcome?.kind === 'later') heardFrom({ outcomes: new Map(), stopped: outcome });
    if (outcome?.kind === 'later' && file) sayAt(form, FILE_STAYS);
    if (outcome === undefined || outcome.kind === 'later') {
      sending.soon();
      askForWaking().catch(() => undefined);
    }
    again();
  });
  releaseLeft(askedToChange())
    .then(async (released) => {
      const entries = await allEntries();
      await settleHanded(entries);
      const told = await goOnChanging(entries);
      if (told !== undefined) say(told);
      if (released) sending.now();
    })
    .then(again, again);
}
