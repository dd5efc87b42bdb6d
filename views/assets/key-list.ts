const BOX = 'key-list';

/** What a key does, as the page says it beside the key. */
function saidOf(target: HTMLElement): string {
  const copy = target.cloneNode(true);
  if (!(copy instanceof HTMLElement)) return '';
  for (const key of copy.querySelectorAll('kbd')) key.remove();
  const label = target instanceof HTMLInputElement ? target.labels?.[0]?.textContent : copy.textContent;
  return (label ?? '').replace(/\s+/g, ' ').trim();
}

function lineOf(key: string, said: string): HTMLLIElement {
  const line = document.createElement('li');
  const letter = document.createElement('kbd');
  letter.textContent = key;
  line.append(letter, ` ${said}`);
  return line;
}

/** Every key that does something on this page, in a box that Escape shuts. */
export function showKeys(): void {
  document.getElementById(BOX)?.remove();
  const box = document.createElement('dialog');
  box.id = BOX;
  box.className = 'key-list';
  const title = document.createElement('h2');
  title.id = `${BOX}-title`;
  title.textContent = 'Keys on this page';
  box.setAttribute('aria-labelledby', title.id);
  const list = document.createElement('ul');
  const seen = new Set<string>();
  for (const target of document.querySelectorAll<HTMLElement>('[data-key]')) {
    const { key = '' } = target.dataset;
    if (seen.has(key)) continue;
    seen.add(key);
    list.append(lineOf(key, saidOf(target)));
  }
  list.append(lineOf('Esc', 'Leave a field, so that a key can be used'), lineOf('?', 'This list'));
  const shut = document.createElement('form');
  shut.method = 'dialog';
  const button = document.createElement('button');
  button.className = 'button button-plain';
  button.textContent = 'Close';
  shut.append(button);
  box.append(title, list, shut);
  document.body.append(box);
  box.addEventListener('close', () => box.remove());
  box.showModal();
}
