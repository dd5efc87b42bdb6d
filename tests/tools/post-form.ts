import type { TestService } from './service.ts';

/** Posts a form as a browser does. */
export function postForm(
  service: TestService,
  url: string,
  fields: Readonly<Record<string, string>>,
  options: { readonly cookies?: Record<string, string>; readonly headers?: Record<string, string> } = {},
) {
  return service.request({
    method: 'POST',
    url,
    headers: { 'content-type': 'application/x-www-form-urlencoded', ...options.headers },
    ...(options.cookies === undefined ? {} : { cookies: options.cookies }),
    payload: new URLSearchParams(fields).toString(),
  });
}

/** The cookie of this name in an answer, as it was set. */
export function cookieIn(
  response: { readonly cookies: readonly { name: string; value: string }[] },
  name: string,
) {
  const cookie = response.cookies.find((each) => each.name === name);
  if (cookie === undefined) throw new Error(`no cookie ${name}`);
  return cookie;
}
