/** The few sizes of reports, as em sizes in millimetres, and their styles. */
import type { Style } from '../typesetting/paragraph.ts';

const style = (sizeMm: number, rest: Partial<Style> = {}): Style => ({
  role: 'report',
  weight: 'regular',
  sizeMm,
  ...rest,
});

/** The smallest has an x of 1.29 mm, over the 1.2 mm that Regulation (EU) 1169/2011 takes for legible (from memory). */
export const textStyles = {
  title: style(7, { role: 'heading', weight: 'bold' }),
  verdict: style(6, { role: 'heading', weight: 'bold' }),
  heading: style(4.6, { role: 'heading', weight: 'bold' }),
  subheading: style(3.5, { role: 'heading', weight: 'bold' }),
  body: style(3.3),
  strong: style(3.3, { weight: 'bold' }),
  cell: style(2.95),
  cellHead: style(2.8, { weight: 'bold' }),
  soft: style(2.7, { colour: 'grey' }),
  furniture: style(2.6, { colour: 'grey' }),
} as const;
