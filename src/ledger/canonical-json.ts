/** JSON in the one form that RFC 8785 allows for a value, so that equal values have equal bytes. */
import canonicalize from 'canonicalize';

/**
 * Members that are `undefined` are left out. Throws `TypeError` for what JSON cannot say: no value at all, numbers that
 * are not finite, half a surrogate pair, a value that contains itself.
 */
export const canonicalJson = (value: unknown): string => {
  const text = canonicalOrThrow(value);
  if (text === undefined) throw new TypeError('There is no JSON for this value.');
  return text;
};

const canonicalOrThrow = (value: unknown): string | undefined => {
  try {
    return canonicalize(value);
  } catch (cause) {
    throw new TypeError('There is no JSON for this value.', { cause });
  }
};
