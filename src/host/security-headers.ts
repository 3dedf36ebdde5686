/** What a page of ours may do, told to the browser with every answer: nothing but its own files and its own station. */
import { randomBytes } from 'node:crypto';

/** A number used once, for the one style sheet that a library of the page writes at run time. */
export const newNonce = (): string => randomBytes(16).toString('base64');

/** Content Security Policy Level 3 (W3C). `blob:` frames and pictures show a tag that the station just rendered. */
export const contentSecurityPolicy = (nonce: string): string =>
  [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    'frame-src blob:',
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');

export const securityHeaders = (nonce: string): Readonly<Record<string, string>> => ({
  'content-security-policy': contentSecurityPolicy(nonce),
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(self), microphone=(), geolocation=(), usb=(), serial=(), payment=()',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'cache-control': 'no-store',
});
