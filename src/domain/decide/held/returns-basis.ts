/** The rules of entering what returns are planned with. */
import type { MakerTerms, ReturnsBasis, ReturnsBasisChange } from '../../held/returns-basis.ts';
import { type Refusal, refusal } from '../../refusal.ts';
import type { Decision } from '../decision.ts';

/** One part is replaced, the others stay; a price break that takes no more off than a smaller one is a mistake. */
export const decideReturnsBasis = (basis: ReturnsBasis, change: ReturnsBasisChange): Decision => {
  switch (change.what) {
    case 'plan': {
      const { what: _what, ...plan } = change;
      const { currency: _currency, ...others } = basis;
      return [{ type: 'returns-basis.recorded', basis: { ...others, ...plan } }];
    }
    case 'maker': {
      const { what: _what, ...terms } = change;
      const makers = basis.makers.filter(({ manufacturer }) => manufacturer !== terms.manufacturer);
      return (
        priceBreakFault(terms) ?? [
          { type: 'returns-basis.recorded', basis: { ...basis, makers: [...makers, terms] } },
        ]
      );
    }
    case 'length': {
      const { what: _what, ...plan } = change;
      const lengths = basis.lengths.filter(({ lengthM }) => lengthM !== plan.lengthM);
      return [
        {
          type: 'returns-basis.recorded',
          basis: {
            ...basis,
            lengths: [...lengths, plan].sort((one, other) => one.lengthM - other.lengthM),
          },
        },
      ];
    }
  }
};

const priceBreakFault = ({ priceBreaks }: MakerTerms): Refusal | undefined => {
  const sorted = priceBreaks.toSorted((one, other) => one.from - other.from);
  const wrong = sorted.find(({ from, percentOff }, index) => {
    const before = sorted[index - 1];
    return before !== undefined && (before.from === from || before.percentOff >= percentOff);
  });
  return wrong === undefined
    ? undefined
    : refusal('price-break-no-better', { from: wrong.from, percentOff: wrong.percentOff }, 'priceBreaks');
};
