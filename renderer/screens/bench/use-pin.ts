/** A PIN in the making: typed, touched, or scanned digit by digit, and signed with by Enter or the command symbol. */
import { type FormEvent, useState } from 'react';
import type { CommandName } from '../../../src/domain/command-symbol.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { pinAfter } from './pin-entry.ts';

export interface Pin {
  readonly pin: string;
  type(text: string): void;
  /** False where the command means nothing here. */
  take(command: CommandName): boolean;
  submit(event: FormEvent): void;
}

export interface PinOptions {
  readonly isRunning: boolean;
  /** The PIN is forgotten when that is done. */
  onSign(pin: string): Promise<unknown>;
  onBack?(): void;
}

export const usePin = ({ isRunning, onSign, onBack }: PinOptions): Pin => {
  const [pin, setPin] = useState('');
  const sign = async (): Promise<void> => {
    if (isRunning || pin === '') return;
    await onSign(pin);
    setPin('');
  };
  const take = (command: CommandName): boolean => {
    if (command === 'confirm') {
      void sign();
      return true;
    }
    if (command === 'back' && onBack !== undefined) {
      onBack();
      return true;
    }
    const next = pinAfter(pin, command);
    if (next === undefined) return false;
    setPin(next);
    return true;
  };
  useScanHandler(({ meaning }) => meaning.meaning === 'command' && take(meaning.command));
  return {
    pin,
    type: (text) => setPin(text.replaceAll(/\D/g, '')),
    take,
    submit: (event) => {
      event.preventDefault();
      void sign();
    },
  };
};
