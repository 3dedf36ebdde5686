/** The tag that belongs on the device now, and the way to it. */
import type { CurrentTag } from '../../../src/domain/device.ts';
import type { DeviceCard } from '../../../src/station/views.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import styles from './device.module.css';

export const DeviceTag = ({ device }: { readonly device: DeviceCard }) => {
  const { t, dateText } = useText();
  const { benchId, currentTag } = device;
  return (
    <section className={styles.detail} aria-labelledby="tag">
      <h2 id="tag">{t('screens:device.tag')}</h2>
      <p>
        {currentTag === undefined
          ? t('screens:device.noTag')
          : t(currentTag.kind === 'status' ? 'screens:device.tagStatus' : 'screens:device.tagQuarantine', {
              number: currentTag.tagNumber,
              date: dateText(currentTag.issuedOn),
            })}
      </p>
      {currentTag === undefined ? null : <TagProgress tag={currentTag} />}
      <div className={styles.buttons}>
        {currentTag === undefined ? null : (
          <Button icon="tag" onPress={() => navigate({ screen: 'tag', benchId, kind: currentTag.kind })}>
            {t('screens:device.openTag')}
          </Button>
        )}
        <Button icon="scan" onPress={() => navigate({ screen: 'tag', benchId, kind: 'id' })}>
          {t('screens:device.idLabel')}
        </Button>
        <Button icon="register" onPress={() => navigate({ screen: 'relabel', benchId })}>
          {t('screens:relabel.open')}
        </Button>
      </div>
    </section>
  );
};

/** How far the tag has come: not printed, printed, or scanned on the device. */
const TagProgress = ({ tag }: { readonly tag: CurrentTag }) => {
  const { t, dateText } = useText();
  const number = tag.tagNumber;
  return (
    <p className={styles.progress} role="status">
      <Icon name={tag.provedOn !== undefined ? 'check' : tag.printed > 0 ? 'scan' : 'blank'} />
      {tag.provedOn !== undefined
        ? t('screens:device.tagApplied', { number, date: dateText(tag.provedOn) })
        : t(tag.printed > 0 ? 'screens:device.tagPrinted' : 'screens:device.tagNotPrinted', { number })}
    </p>
  );
};
