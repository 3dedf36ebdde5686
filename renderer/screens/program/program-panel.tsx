/** The employer's program: what holds, who signed it, whose rule gives what, the versions before, and rules to begin with. */
import { useState } from 'react';
import type { Program } from '../../../src/domain/program.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { useIsAdministrator } from '../people/use-is-administrator.ts';
import { EarlierPrograms } from './earlier-programs.tsx';
import { OtherRules } from './other-rules.tsx';
import styles from './program.module.css';
import { ProgramEditor } from './program-editor.tsx';
import { ProgramPresets } from './program-presets.tsx';
import { ProgramRules } from './program-rules.tsx';
import { ReleaseRules } from './release-rules.tsx';

export const ProgramPanel = () => {
  const { t, dateText, inLanguage } = useText();
  const { data, error } = useStationQuery('program.show', {});
  const isAdministrator = useIsAdministrator();
  const [edited, setEdited] = useState<Program>();
  const [adopted, setAdopted] = useState<string>();
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  const { program, adoption, earlier, presets, standard, groundsOfTrade, release } = data;
  const begin = (from: Program): void => {
    setAdopted(undefined);
    setEdited(from);
  };
  if (edited !== undefined)
    return (
      <ProgramEditor
        from={edited}
        groundsOfTrade={groundsOfTrade}
        releaseOfTrade={release}
        onAdopted={(sentence) => {
          setAdopted(sentence);
          setEdited(undefined);
        }}
        onCancel={() => setEdited(undefined)}
      />
    );
  return (
    <div className={styles.screen}>
      <p role="status" className={styles.adopted}>
        {adopted === undefined ? null : (
          <>
            <Icon name="check" />
            {adopted}
          </>
        )}
      </p>
      <section className={styles.box} aria-labelledby="program-in-force">
        <div className={styles.head}>
          <div className={styles.words}>
            <h2 id="program-in-force">{t('program:inForce.title')}</h2>
            <span className={styles.name}>{inLanguage(program.title)}</span>
            <span className={styles.soft}>
              {t('program:inForce.version', { key: program.key, version: program.version })}
            </span>
            <span className={styles.soft}>
              {adoption === undefined
                ? t('program:inForce.shipped')
                : t('program:inForce.signed', {
                    by: adoption.byName,
                    date: dateText(adoption.on),
                    from: dateText(adoption.effectiveFrom),
                  })}
            </span>
          </div>
          {isAdministrator ? (
            <Button look="primary" onPress={() => begin(program)}>
              {t('program:inForce.change')}
            </Button>
          ) : (
            <span className={styles.soft}>{t('program:inForce.readOnly')}</span>
          )}
        </div>
        <h3>{t('program:rules.title')}</h3>
        <p className={styles.soft}>{t('program:rules.hint')}</p>
        <ProgramRules program={program} standard={standard} />
        <h3>{t('program:other.title')}</h3>
        <OtherRules program={program} />
        <h3>{t('program:release.title')}</h3>
        <ReleaseRules program={program} ofTrade={release} />
      </section>
      <div className={styles.columns}>
        <EarlierPrograms earlier={earlier} standard={standard} />
        <ProgramPresets presets={presets} standard={standard} onBegin={isAdministrator ? begin : undefined} />
      </div>
    </div>
  );
};
