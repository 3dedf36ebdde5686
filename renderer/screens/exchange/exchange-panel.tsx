/** What goes into the station and out of it as files: a fleet list to import, and everything to export. */
import { useState } from 'react';
import { useText } from '../../i18n/text.ts';
import { useSignedIn } from '../../station/status.ts';
import styles from './exchange.module.css';
import { ExportBox } from './export-box.tsx';
import { ImportBox } from './import-box.tsx';
import { ImportFlow } from './import-flow.tsx';

export const ExchangePanel = () => {
  const { t } = useText();
  const roles = useSignedIn()?.roles ?? [];
  const [file, setFile] = useState<File>();
  if (!roles.includes('inspector') && !roles.includes('administrator'))
    return <p>{t('exchange:onlyOthers')}</p>;
  if (file !== undefined) {
    const key = `${file.name} ${file.lastModified} ${file.size}`;
    return <ImportFlow key={key} file={file} onFile={setFile} onLeave={() => setFile(undefined)} />;
  }
  return (
    <div className={styles.boxes}>
      <ImportBox onFile={setFile} />
      <ExportBox />
    </div>
  );
};
