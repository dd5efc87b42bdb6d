import { dictionary } from '@zxcvbn-ts/language-common';

/** Why a password is not taken, at the field that every form has for it. */
interface PasswordFault {
  readonly field: 'password';
  readonly detail: string;
}

/** The most common leaked passwords, as the library orders them; the first 3 000 that are long enough are refused. */
const refused = new Set(dictionary.passwords.filter((each) => each.length >= 8).slice(0, 3000));

/** Length and commonness, no rules of composition (OWASP ASVS 5.0, V6.2). */
export function passwordFault(password: string, about: readonly string[]): PasswordFault[] {
  const say = (detail: string): PasswordFault[] => [{ field: 'password', detail }];
  if ([...password].length < 8) return say('must be at least 8 characters');
  const plain = password.toLowerCase();
  if (refused.has(plain)) return say('is among the most common ones; choose another');
  if (about.some((word) => word !== '' && plain === word.toLowerCase()))
    return say('must not be your name or address');
  return [];
}
