/** Gives the tag out for printing, and says where it was saved. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { TagKind } from '../../../src/domain/tag-content.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { openPdf } from '../../station/open-pdf.ts';
import { useReadyStation } from '../../station/status.ts';
import styles from './issue-tag.module.css';

export interface IssueTagProps {
  readonly benchId: BenchId;
  readonly kind: TagKind;
}

export const IssueTag = ({ benchId, kind }: IssueTagProps) => {
  const { t } = useText();
  const opensFiles = useReadyStation()?.opensFiles ?? false;
  const { run, isRunning, error } = useStationCommand('tag.issue');
  const [issued, setIssued] = useState<OutputOf<'tag.issue'>>();
  const issue = async (): Promise<void> => {
    if (isRunning) return;
    const result = await run({ benchId, kind, open: opensFiles });
    if (!result.ok) return;
    setIssued(result.output);
    if (!result.output.opened) openPdf(result.output.pdfBase64, fileName(result.output.pdfPath));
  };
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'confirm') return false;
    void issue();
    return true;
  });
  return (
    <section className={styles.issue}>
      <Button look="primary" size="large" icon="tag" onPress={() => void issue()}>
        {t('walk:tag.open')}
      </Button>
      <AlertLine sentence={error?.sentence} />
      {issued !== undefined && (
        <div className={styles.saved} role="status">
          <p>
            {t('walk:tag.saved')} <strong>{issued.pdfPath}</strong> {t('walk:tag.savedToo')}{' '}
            <strong>{fileName(issued.pngPath)}</strong>.
          </p>
          {issued.symbols.length > 1 && <p>{t('walk:tag.readBack')}</p>}
        </div>
      )}
    </section>
  );
};

const fileName = (path: string): string => path.split(/[\\/]/).at(-1) ?? path;
