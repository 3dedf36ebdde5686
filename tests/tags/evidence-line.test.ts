/** What the quarantine tag says must happen before return. */
import { expect, test } from 'vitest';
import { linesBeforeReturn } from '../../src/tags/evidence-line.ts';
import { layOutTag } from '../../src/tags/lay-out-tag.ts';
import { textsOf } from '../../src/typesetting/primitive.ts';
import { evidenceOfTwelve, quarantineTag } from './sample-tags.ts';

test('evidence for every reason is said without numbers, and the reasons have none', () => {
  const tag = quarantineTag(['en', 'es'], 3);
  expect(linesBeforeReturn(tag).map(({ en }) => en)).toEqual([
    'Certificate of the manufacturer or its authorised centre',
    'New documented inspection by a competent person',
  ]);
  const laid = layOutTag(tag, { widthMm: 100, heightMm: 150 }, 300);
  const said = laid.fits ? textsOf(laid.layout).map(({ text }) => text) : [];
  expect(said).toContain('Lifeline crushed 3.2 m from the hook.');
});

test('evidence for some of the reasons names them by the numbers that stand before them, in each language', () => {
  const tag = quarantineTag(['en', 'es'], 12, { evidence: evidenceOfTwelve });
  expect(linesBeforeReturn(tag)).toEqual([
    { en: 'Reason 1: Manufacturer’s re-marking', es: 'Motivo 1: Nuevo marcado del fabricante' },
    {
      en: 'Reasons 2–10, 12: Manufacturer’s repair and recertification certificate',
      es: 'Motivos 2–10, 12: Certificado de reparación y recertificación del fabricante',
    },
    {
      en: 'Reasons 7, 11: Closed investigation of the fall',
      es: 'Motivos 7, 11: Investigación de la caída cerrada',
    },
    {
      en: 'Reason 11: Manufacturer’s written word or manufacturer’s repair and recertification certificate',
      es: 'Motivo 11: Palabra escrita del fabricante o certificado de reparación y recertificación del fabricante',
    },
    {
      en: 'New documented inspection by a competent person',
      es: 'Nueva inspección documentada por una persona competente',
    },
  ]);
  const laid = layOutTag(tag, { widthMm: 148, heightMm: 210 }, 300);
  const said = laid.fits ? textsOf(laid.layout).map(({ text }) => text) : [];
  expect(said).toContain('2. Lifeline crushed 3.2 m from the hook.');
  expect(said).toContain('2. Cable aplastado a 3,2 m del gancho.');
  expect(said.join(' ')).toContain('Reasons 2–10, 12: Manufacturer’s repair');
});
