/** What a turn of work found: nothing more, more of the same, or that it must wait for room. */
type Turn = 'rest' | 'more' | 'wait';

/**
 * Answers a function that asks for a turn of `work`. Turns never overlap, and a turn asked for while one is
 * running is taken once after it: what is asked for is never lost, and never piles up.
 */
export function oneAtATime(
  work: () => Promise<Turn>,
  how: { wait(room: () => void): void; failed(error: unknown): void },
): () => void {
  let running = false;
  let asked = false;

  function ask(): void {
    asked = true;
    if (!running) take();
  }
  function take(): void {
    running = true;
    asked = false;
    work()
      .then((turn) => {
        if (turn === 'more') asked = true;
        if (turn === 'wait') how.wait(ask);
      }, how.failed)
      .finally(() => {
        running = false;
        if (asked) take();
      });
  }
  return ask;
}
