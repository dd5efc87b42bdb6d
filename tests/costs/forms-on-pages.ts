/** A form as a page has it, with what its controls hold. */
export interface FormOnPage {
  readonly action: string;
  /** What its controls hold as the page is opened: hidden fields and picks among them. */
  readonly held: Readonly<Record<string, string>>;
  /** Fields that any text can be typed into. */
  readonly texts: readonly string[];
  /** Those of several lines among them. */
  readonly areas: readonly string[];
  /** What its buttons send. */
  readonly buttons: readonly (readonly [name: string, value: string])[];
}

const attribute = (tag: string, name: string): string | undefined =>
  new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1];

const plain = (text: string): string =>
  text
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&');

const named = (html: string, tag: string): { tag: string; name: string }[] =>
  [...html.matchAll(new RegExp(`<${tag}\\b[^>]*>`, 'g'))].flatMap(([found]) => {
    const name = attribute(found, 'name');
    return name === undefined ? [] : [{ tag: found, name: plain(name) }];
  });

/** Every form of a page that posts. */
export function formsOn(html: string): FormOnPage[] {
  return [...html.matchAll(/<form\b([^>]*)>(.*?)<\/form>/gs)]
    .filter(([, head = '']) => attribute(head, 'method')?.toLowerCase() === 'post')
    .map(([, head = '', inside = '']) => {
      const inputs = named(inside, 'input').map((each) => ({
        ...each,
        type: attribute(each.tag, 'type') ?? 'text',
      }));
      const areas = named(inside, 'textarea').map(({ name }) => name);
      const isPicked = ({ type, tag }: { type: string; tag: string }) =>
        type === 'hidden' || ((type === 'radio' || type === 'checkbox') && / checked/.test(tag));
      return {
        action: plain(attribute(head, 'action') ?? ''),
        held: Object.fromEntries(
          inputs.filter(isPicked).map(({ name, tag }) => [name, plain(attribute(tag, 'value') ?? '')]),
        ),
        texts: [
          ...inputs
            .filter(({ type }) => ['text', 'email', 'password', 'search'].includes(type))
            .map(({ name }) => name),
          ...areas,
        ],
        areas,
        buttons: named(inside, 'button').map(
          ({ name, tag }) => [name, plain(attribute(tag, 'value') ?? '')] as const,
        ),
      };
    });
}

/** The addresses that a page leads to, on this service. */
export const linksOn = (html: string): string[] =>
  [...html.matchAll(/<a\b[^>]*\shref="(\/[^"#]*)/g)].map(([, address = '']) => plain(address));
