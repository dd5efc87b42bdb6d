import type { FaultCode } from '../../../shared/problems/faults.ts';
import type { ProblemCode } from '../../problems/registry.ts';

interface ProblemWords {
  /** What has happened. */
  readonly meaning: string;
  /** What to do about it. */
  readonly advice: string;
}

/** What each problem means and what to do, for whoever follows the address in its `type`. */
export const PROBLEM_WORDS: Readonly<Record<ProblemCode, ProblemWords>> = {
  'invalid-input': {
    meaning: 'The body is JSON, and one or more of its fields can’t be taken. Nothing was computed or kept.',
    advice:
      'Read `errors`: each fault has the JSON pointer of its field, a code, what is allowed and what came.',
  },
  'invalid-json': {
    meaning: 'The body can’t be read as JSON.',
    advice: 'Send one JSON document in UTF-8, without comments, commas at the end, NaN or Infinity.',
  },
  'bad-request': {
    meaning: 'The address, a header or the length of the request can’t be read.',
    advice: 'Compare the request with the operation in the API reference.',
  },
  'sign-in-required': {
    meaning: 'This needs a key, a session or a share link, and none that holds was sent.',
    advice: 'Send `Authorization: Bearer` with a key of your shop. A key that was revoked needs a new one.',
  },
  'sign-in-refused': {
    meaning: 'E-mail address and password do not fit together, or the account is closed.',
    advice: 'Type both again. An administrator of the desk can set a new password.',
  },
  'not-permitted': {
    meaning: 'Whoever asks is known, and their role or key does not allow this.',
    advice: 'Ask an administrator of the desk for the role, or for a key with the scope.',
  },
  'cross-site': {
    meaning: 'A page of another site made the browser send this form.',
    advice: 'Open the page here and send the form from it.',
  },
  'not-found': {
    meaning: 'Nothing is at this address, or it belongs to another shop.',
    advice: 'Check the address and the id. A share link may have ended: ask the desk for a new one.',
  },
  'method-not-allowed': {
    meaning: 'There is something at this address, and it does not take this method.',
    advice: 'The header `Allow` names the methods that it takes.',
  },
  'request-too-slow': {
    meaning: 'The request did not arrive whole within 30 s.',
    advice: 'Send it again; a command with the same idempotency key takes effect once.',
  },
  conflict: {
    meaning: 'The request is in order, and what is kept already rules it out.',
    advice: 'Read the state again; the detail says what is in the way.',
  },
  'still-running': {
    meaning: 'A request with the same idempotency key has not ended yet.',
    advice: 'Wait a moment and send the same request with the same key again.',
  },
  held: {
    meaning:
      'A stop stands: a person said stop, or what was read stops it. Nothing is kept that takes turning the engine.',
    advice:
      'Do not turn it. The assessment of the build says why, and the way out of each reason; the desk lifts it.',
  },
  'stop-rests-on-it': {
    meaning: 'A stop rests on what this would strike out, replace or take back, and a builder’s link cannot.',
    advice: 'Tell the desk what was read wrong: it strikes the reading out, with the reason.',
  },
  gone: {
    meaning: 'It was here and is no longer.',
    advice: 'Stop asking for it; ask the desk where its record is.',
  },
  'version-stale': {
    meaning: 'Somebody changed it after you read it; your change would have overwritten theirs.',
    advice: 'Read it again, make your change on the newest state, and send that with the new `ETag`.',
  },
  'body-too-large': {
    meaning: 'The body is larger than this address takes.',
    advice: 'Send less at once: lists hold 2 000 items at the most unless a field says otherwise.',
  },
  'url-too-long': {
    meaning: 'The address, or a part of it, is too long.',
    advice: 'Put what you send into the body of a POST.',
  },
  'media-type-not-taken': {
    meaning: 'The body is of a kind that this address does not take.',
    advice: 'Send JSON with `Content-Type: application/json`.',
  },
  'key-reused': {
    meaning:
      'The idempotency key came before with another request. It makes one request count once, and no other.',
    advice:
      'Make a new key for each new request; keep the key for a repeat of the same one. It is remembered for 30 days.',
  },
  'version-required': {
    meaning: 'A change here needs to name the version that it was made on.',
    advice: 'Send `If-Match` with the `ETag` of what you read.',
  },
  'quota-exceeded': {
    meaning: 'More requests came from one address or account in a while than are answered.',
    advice: 'Wait as long as `Retry-After` says, then go on more slowly.',
  },
  'headers-too-large': {
    meaning: 'The headers of the request are too large.',
    advice: 'Clear the cookies of this site, or send fewer headers.',
  },
  'internal-error': {
    meaning: 'Something went wrong here, and it was not the request.',
    advice:
      'Try again. If it happens again, tell the desk the `requestId`: it leads to what was noted of it.',
  },
  'service-busy': {
    meaning: 'The service can’t reach its database, or has too much to do.',
    advice: 'Wait as long as `Retry-After` says and send the same request again, with its idempotency key.',
  },
};

/** What each fault of an input means. */
export const FAULT_WORDS: Readonly<Record<FaultCode, string>> = {
  required: 'The field, or a part of it, is missing; the pointer says where it belongs.',
  'wrong-dimension': 'A unit of another kind came, a unit where none belongs, or none where one is needed.',
  'unknown-unit': 'The unit is not known, or the text could mean more than one thing.',
  'not-a-number': 'What came can’t be read as a number.',
  'out-of-range': 'The number is outside what the field takes, such as below zero.',
  'not-allowed': 'The value is not one of those the field takes, or does not go with another field.',
  'unknown-field': 'There is no field of this name here.',
  'too-many': 'The list has more items than are taken.',
  'impossible-input': 'No engine has these values together, or the value is beyond any machine part.',
};
