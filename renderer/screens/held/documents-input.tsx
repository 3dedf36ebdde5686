/**
 * Files that are to be kept with the record of a held device: PDFs, and pictures out of files or of the camera. The command
 * symbol *picture* opens the camera.
 */
import { useRef, useState } from 'react';
import type { InputOf } from '../../../src/station/contract.ts';
import { base64Of } from '../../camera/base64.ts';
import { PictureToKeep } from '../../camera/picture-to-keep.tsx';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useNumberedActs } from '../../scan/use-numbered-acts.ts';
import styles from './held.module.css';

export type GivenDocument = NonNullable<InputOf<'held.record-evidence'>['documents']>[number];

export interface DocumentsInputProps {
  readonly label: string;
  readonly documents: readonly GivenDocument[];
  onChange(documents: readonly GivenDocument[]): void;
  readonly error?: string | undefined;
}

export const DocumentsInput = ({ label, documents, onChange, error }: DocumentsInputProps) => {
  const { t } = useText();
  const input = useRef<HTMLInputElement>(null);
  const add = async (files: readonly File[]): Promise<void> => {
    const added: GivenDocument[] = [];
    for (const file of files) added.push({ name: file.name, contentBase64: await base64Of(file) });
    onChange([...documents, ...added]);
  };
  const [isTaking, setTaking] = useState(false);
  const [picture, setPicture] = useState<Blob>();
  const take = (): void => setTaking(true);
  useNumberedActs([], { picture: take });
  const endTaking = (): void => {
    setTaking(false);
    setPicture(undefined);
  };
  const keep = async (): Promise<void> => {
    if (picture === undefined) return;
    endTaking();
    await add([new File([picture], `${t('held:record.pictureName', { number: documents.length + 1 })}.jpg`)]);
  };
  return (
    <fieldset className={styles.group}>
      <legend className={styles.label}>{label}</legend>
      {documents.length === 0 ? <p className={styles.soft}>{t('held:record.none')}</p> : null}
      <ul className={styles.list}>
        {documents.map((document) => (
          <li key={`${document.name} ${document.contentBase64.length}`} className={styles.buttons}>
            <Button icon="cross" onPress={() => onChange(documents.filter((each) => each !== document))}>
              {t('held:record.remove', { name: document.name })}
            </Button>
          </li>
        ))}
      </ul>
      <div className={styles.buttons}>
        <Button icon="picture" onPress={() => input.current?.click()}>
          {t('held:record.attach')}
        </Button>
        <Button icon="camera" onPress={take}>
          {t('held:record.takePicture')}
        </Button>
      </div>
      <input
        ref={input}
        type="file"
        hidden
        multiple
        accept="application/pdf,image/*"
        onChange={({ target }) => {
          const files = [...(target.files ?? [])];
          target.value = '';
          void add(files);
        }}
      />
      <AlertLine sentence={error} />
      {isTaking ? (
        <PictureToKeep
          title={label}
          picture={picture}
          hint={t('held:record.pictureHint')}
          isKeeping={false}
          error={undefined}
          onPicture={setPicture}
          onFile={(file) => {
            endTaking();
            void add([file]);
          }}
          onKeep={() => void keep()}
          onClose={endTaking}
        />
      ) : null}
    </fieldset>
  );
};
