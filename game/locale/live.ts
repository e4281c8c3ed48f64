import { type Language, wordsIn } from '../../scoring/index.ts';
import { language } from './language.ts';

/** A text of the ready exercises in the language in use; any other text is somebody's own and stays as it is. */
export function ready(text: string): string {
  return wordsIn(language.value).ready(text);
}

/** A refusal, or another text said in English where it was found out (by a school's lab, in a file), in the language in use; what has no words there stays as it is. */
export function foundOut(text: string): string {
  return wordsIn(language.value).refusal(text);
}

/**
 * One catalogue for all languages: what is read from it is read from the one in use at that moment, so that `const w = words.cut` at the top of a
 * file follows the language. Texts, functions and lists come out as they are: read them where they are shown, not before.
 */
export function live<T extends object>(catalogues: Record<Language, T>): T {
  return view(() => catalogues[language.value]);
}

function view<T extends object>(current: () => T): T {
  const inside = new Map<PropertyKey, object>();
  return new Proxy({} as T, {
    get(_, key) {
      const value: unknown = Reflect.get(current(), key);
      if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
      let part = inside.get(key);
      if (part === undefined) {
        part = view(() => Reflect.get(current(), key) as object);
        inside.set(key, part);
      }
      return part;
    },
    has: (_, key) => Reflect.has(current(), key),
    ownKeys: () => Reflect.ownKeys(current()),
    getOwnPropertyDescriptor: (_, key) => {
      const found = Reflect.getOwnPropertyDescriptor(current(), key);
      return found && { ...found, configurable: true };
    },
  });
}
