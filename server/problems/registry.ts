/**
 * Every problem a client can be told of: its code (the last part of `type`), status and title. The list is
 * part of the API; a code once published keeps its meaning.
 */
export const PROBLEMS = {
  'invalid-input': { status: 422, title: 'The input can’t be taken' },
  'invalid-json': { status: 400, title: 'The body is not JSON' },
  'bad-request': { status: 400, title: 'The request can’t be read' },
  'sign-in-required': { status: 401, title: 'Sign in first' },
  'sign-in-refused': { status: 401, title: 'This sign-in does not fit' },
  'not-permitted': { status: 403, title: 'Your role may not do this' },
  'cross-site': { status: 403, title: 'This came from another site' },
  'not-found': { status: 404, title: 'Nothing is here' },
  'method-not-allowed': { status: 405, title: 'This address does not take that method' },
  'request-too-slow': { status: 408, title: 'The request took too long to arrive' },
  conflict: { status: 409, title: 'This can’t be done now' },
  'still-running': { status: 409, title: 'The same request is still running' },
  held: { status: 409, title: 'A stop stands: nobody turns it' },
  'stop-rests-on-it': { status: 409, title: 'A stop rests on this' },
  gone: { status: 410, title: 'This is no longer there' },
  'version-stale': { status: 412, title: 'It has changed since you read it' },
  'body-too-large': { status: 413, title: 'The body is too large' },
  'url-too-long': { status: 414, title: 'The address is too long' },
  'media-type-not-taken': { status: 415, title: 'This kind of body is not taken' },
  'key-reused': { status: 422, title: 'The idempotency key was used for another request' },
  'version-required': { status: 428, title: 'Say which version you read' },
  'quota-exceeded': { status: 429, title: 'Too many requests' },
  'headers-too-large': { status: 431, title: 'The headers are too large' },
  'internal-error': { status: 500, title: 'Something went wrong here' },
  'service-busy': { status: 503, title: 'The service can’t answer now' },
} as const;

export type ProblemCode = keyof typeof PROBLEMS;
