/** A question that must be answered before anything else goes on. The command symbol *cancel* closes it. */
import type { ReactNode } from 'react';
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { classes } from '../design/classes.ts';
import { useScanHandler } from '../scan/scan.ts';
import styles from './dialog.module.css';

export interface DialogProps {
  readonly title: string;
  readonly children: ReactNode;
  onClose(): void;
  /** For a message that must not be missed from two steps away. */
  readonly isLoud?: boolean;
  /** For what is looked at rather than read. */
  readonly isWide?: boolean;
}

export const Dialog = ({ title, children, onClose, isLoud = false, isWide = false }: DialogProps) => {
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'cancel') return false;
    onClose();
    return true;
  });
  return (
    <ModalOverlay
      className={styles.veil ?? ''}
      isOpen
      isDismissable
      onOpenChange={(isOpen) => isOpen || onClose()}
    >
      <Modal className={classes(styles.modal, isWide && styles.wide)}>
        <AriaDialog className={styles.dialog ?? ''}>
          <Heading slot="title" className={classes(isLoud ? styles.loud : styles.title)}>
            {title}
          </Heading>
          {children}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
};
