/** What this window remembers for the next time: language, theme, where checkpoints are kept, whether refusals are read aloud, and how far the tour is. Works without storage, only forgetfully. */

type Name = 'language' | 'theme' | 'checkpoint-folder' | 'read-aloud' | 'tour';

export const recall = (name: Name): string | undefined => {
  try {
    return localStorage.getItem(`srl-bench.${name}`) ?? undefined;
  } catch {
    return undefined;
  }
};

export const remember = (name: Name, value: string): void => {
  try {
    localStorage.setItem(`srl-bench.${name}`, value);
  } catch {
    // A window whose storage is closed off works all the same.
  }
};
