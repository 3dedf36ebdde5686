/** One case of "who is this?": choose, propose, a second person, and what happens now. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { CandidateList } from './candidate-list.tsx';
import { CandidatePage } from './candidate-page.tsx';
import { CaseClosed } from './case-closed.tsx';
import { NonePage } from './none-page.tsx';
import { SecondPerson } from './second-person.tsx';

export const CaseScreen = ({ identityCase }: { readonly identityCase: number }) => {
  const { t } = useText();
  const { data, error } = useStationQuery('identity.show', { identityCase });
  const [chosen, setChosen] = useState<BenchId | 'none'>();
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  const { identity } = data;
  const { candidates } = identity.ranking;
  switch (identity.state) {
    case 'taken':
    case 'unidentified':
      return <CaseClosed identity={identity} />;
    case 'proposed': {
      const candidate = candidates.find(({ benchId }) => benchId === identity.proposal?.benchId);
      return candidate === undefined ? null : <SecondPerson identity={identity} candidate={candidate} />;
    }
    case 'open': {
      const back = () => setChosen(undefined);
      const candidate = candidates.find(({ benchId }) => benchId === chosen);
      if (chosen === 'none') return <NonePage identity={identity} onBack={back} />;
      return candidate === undefined ? (
        <CandidateList identity={identity} onChoose={setChosen} />
      ) : (
        <CandidatePage identity={identity} candidate={candidate} onBack={back} />
      );
    }
  }
};
