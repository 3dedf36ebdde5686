/** An address for bytes in memory, given free when they are shown no more. */
import { useEffect, useState } from 'react';

export const useObjectUrl = (bytes: Blob | undefined): string | undefined => {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    if (bytes === undefined) return setAddress(undefined);
    const made = URL.createObjectURL(bytes);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [bytes]);
  return address;
};
