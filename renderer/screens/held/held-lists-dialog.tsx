/** The lists of held devices as files: evidence, fall cases, return batches, on paper, as CSV or as a workbook. */
import { useState } from 'react';
import type { InputOf } from '../../../src/station/contract.ts';
import { Choice } from '../../components/choice.tsx';
import { useText } from '../../i18n/text.ts';
import { ReportDialog } from '../records/report-dialog.tsx';

type HeldList = Extract<InputOf<'report.make'>['of'], { kind: 'held' }>['list'];

const lists: readonly HeldList[] = ['evidence', 'fall cases', 'return batches'];

export const HeldListsDialog = ({ onClose }: { onClose(): void }) => {
  const { t } = useText();
  const [list, setList] = useState<HeldList>('evidence');
  return (
    <ReportDialog
      title={t('held:lists.title')}
      of={{ kind: 'held', list }}
      isList
      firstNumber={lists.length + 1}
      onClose={onClose}
    >
      <Choice<HeldList>
        label={t('held:lists.list')}
        firstNumber={1}
        value={list}
        options={lists.map((value) => ({ value, label: t(`held:lists.of.${value}`) }))}
        onChange={setList}
      />
    </ReportDialog>
  );
};
