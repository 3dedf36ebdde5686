/** The dots of a tag as they are shown. */
import { describe, expect, it } from 'vitest';
import { dotsAcross, zoomAfter } from '../../../renderer/screens/bench/tag-dots.ts';

describe('the dots of a tag', () => {
  /** 25.4 mm in an inch (NIST SP 811): an inch has as many dots as the printer has dots per inch. */
  it.each([203, 300, 600] as const)('are %d in an inch', (dpi) => {
    expect(dotsAcross(25.4, dpi)).toBe(dpi);
    expect(dotsAcross(50.8, dpi)).toBe(2 * dpi);
  });

  it('are magnified step by step, and then the whole tag is shown again', () => {
    expect(zoomAfter('fit')).toBe('1');
    expect(zoomAfter('1')).toBe('3');
    expect(zoomAfter('6')).toBe('fit');
  });
});
