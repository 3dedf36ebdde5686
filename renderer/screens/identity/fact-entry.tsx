/** One fact: chosen by number where there are few values, typed where there are many. */
import { type FormEvent, useState } from 'react';
import {
  hookTypes,
  housingColours,
  lifelineMaterialSchema,
  type ModelSheet,
} from '../../../src/domain/model-sheet.ts';
import { Button } from '../../components/button.tsx';
import { type NumberedChoice, NumberedChoices } from '../../components/numbered-choices.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { type FactDraft, faultOf, type MenuField } from './fact-draft.ts';
import { useFactWords } from './use-fact-words.ts';
import styles from './who.module.css';

export interface FactEntryProps {
  readonly field: MenuField;
  readonly draft: FactDraft;
  readonly sheets: readonly ModelSheet[];
  /** An empty value means that it was not seen. */
  onKeep(value: string): void;
  onBack(): void;
}

/** As many as have a digit, beside the one for typing. */
const mostChoices = 8;

export const FactEntry = (props: FactEntryProps) => {
  const { field, sheets, onKeep, onBack } = props;
  const { t } = useText();
  const words = useFactWords();
  const [isTyping, setTyping] = useState(false);
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'back') return false;
    onBack();
    return true;
  });
  const named = (names: readonly string[]): readonly NumberedChoice[] => [
    ...[...new Set(names)].slice(0, mostChoices).map((name) => ({
      key: name,
      label: name,
      onChoose: () => onKeep(name),
    })),
    { key: 'type it', label: t('screens:identity.typeIt'), onChoose: () => setTyping(true) },
  ];
  const valued = <Value extends string>(
    values: readonly Value[],
    label: (value: Value) => string,
  ): readonly NumberedChoice[] =>
    values.map((value) => ({ key: value, label: label(value), onChoose: () => onKeep(value) }));
  const choices = (): readonly NumberedChoice[] | undefined => {
    switch (field) {
      case 'manufacturer':
        return named(sheets.map(({ manufacturer }) => manufacturer));
      case 'model':
        return named(
          sheets
            .filter(({ manufacturer }) => ['', manufacturer].includes(props.draft.manufacturer))
            .map(({ model }) => model),
        );
      case 'lifelineMaterial':
        return valued(lifelineMaterialSchema.options, (value) => t(`screens:material.${value}`));
      case 'hookType':
        return valued(hookTypes, words.hook);
      case 'housingColour':
        return valued(housingColours, words.colour);
      default:
        return undefined;
    }
  };
  const offered = isTyping ? undefined : choices();
  return (
    <div className={styles.screen}>
      <h1>{t(`screens:identity.field.${field}`)}</h1>
      {offered === undefined ? (
        <TypedFact {...props} />
      ) : (
        <>
          <div className={styles.choices}>
            <NumberedChoices choices={offered} />
          </div>
          <div className={styles.actions}>
            <Button onPress={onBack}>{t('screens:identity.back')}</Button>
            <Button onPress={() => onKeep('')}>{t('screens:identity.clear')}</Button>
          </div>
        </>
      )}
    </div>
  );
};

const TypedFact = ({ field, draft, onKeep, onBack }: FactEntryProps) => {
  const { t, lengthUnit } = useText();
  const [text, setText] = useState<string>(draft[field]);
  const [wasTried, setTried] = useState(false);
  const fault = faultOf({ ...draft, [field]: text }, field, lengthUnit);
  const keep = (): void => {
    setTried(true);
    if (fault === undefined) onKeep(text.trim());
  };
  useScanHandler((scan) => {
    if (scan.meaning.meaning === 'command' && ['confirm', 'next'].includes(scan.meaning.command)) keep();
    else if (scan.meaning.meaning === 'unknown' && field === 'serial') setText(scan.text);
    else return false;
    return true;
  });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    keep();
  };
  const hint =
    field === 'lengthM'
      ? t('screens:identity.lengthHint', { unit: lengthUnit })
      : t(field === 'dateOfManufacture' ? 'screens:identity.dateHint' : 'screens:identity.fragmentHint');
  return (
    <form className={styles.typed} onSubmit={submit}>
      <TextInput
        label={t(`screens:identity.field.${field}`)}
        isLabelHidden
        hint={hint}
        value={text}
        onChange={setText}
        error={wasTried && fault !== undefined ? t(`screens:identity.${fault}`) : undefined}
        autoFocus
      />
      <div className={styles.actions}>
        <Button onPress={onBack}>{t('screens:identity.back')}</Button>
        <Button onPress={() => onKeep('')}>{t('screens:identity.clear')}</Button>
        <Button type="submit" look="primary" icon="forward">
          {t('screens:identity.keep')}
        </Button>
      </div>
    </form>
  );
};
