/** Light or dark: what the operating system asks for, until somebody chooses at this window. */
import { useCallback, useState } from 'react';
import { recall, remember } from '../station/remembered.ts';

export type Theme = 'light' | 'dark';

export const firstTheme = (): Theme => {
  const kept = recall('theme');
  if (kept === 'light' || kept === 'dark') return kept;
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
};

export const showTheme = (theme: Theme): void => {
  document.documentElement.setAttribute('data-theme', theme);
};

export const useTheme = (): { readonly theme: Theme; toggle(): void } => {
  const [theme, setTheme] = useState(firstTheme);
  const toggle = useCallback(() => {
    const next = theme === 'light' ? 'dark' : 'light';
    remember('theme', next);
    showTheme(next);
    setTheme(next);
  }, [theme]);
  return { theme, toggle };
};
