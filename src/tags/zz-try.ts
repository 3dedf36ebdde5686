import { writeFileSync } from 'node:fs';
import { benchIdFrom } from '../domain/bench-id/bench-id.ts';
import { renderTag } from './render-tag.ts';
const benchId = benchIdFrom([19, 7, 20, 3, 29, 4]);
const m = (en: string, es: string) => ({ en, es });
const base = { benchId, tagNumber: 4, manufacturer: 'Northfell', model: 'CR-15', serial: 'NF-204417', ratedLength: '15.24 m', station: 'Harrow Point depot' } as any;
const reasons = [
 { zone: 'marking', sentence: m('Date of manufacture on the marking cannot be read.', 'La fecha de fabricación del marcado no se puede leer.') },
 { zone: 'lifeline', sentence: m('Lifeline crushed 3.2 m from the hook.', 'Cable aplastado a 3,2 m del gancho.') },
 { zone: 'brake', sentence: m('Brake slow to engage near full payout.', 'El freno tarda en actuar cerca de la extensión total.') },
 { zone: 'upper-hook', sentence: m('Corrosion on the upper hook: refer to the manufacturer.', 'Corrosión en el gancho superior: consulte al fabricante.') },
 { zone: 'housing', sentence: m('Housing cracked: the inside may be damaged.', 'Carcasa agrietada: el interior puede estar dañado.') },
 { zone: 'fasteners', sentence: m('A screw of the housing is missing.', 'Falta un tornillo de la carcasa.') },
 { zone: 'indicator', sentence: m('Load indicator deployed: counts as a fall.', 'Indicador de carga activado: cuenta como una caída.') },
 { zone: 'lower-hook', sentence: m('Gate of the lower hook does not lock by itself.', 'El cierre del gancho inferior no se bloquea solo.') },
 { zone: 'termination', sentence: m('Thimble out of place at the termination.', 'Guardacabo desplazado en el terminal.') },
 { zone: 'retraction', sentence: m('Lifeline does not retract fully under tension.', 'El cable no se recoge del todo bajo tensión.') },
 { zone: 'history', sentence: m('Fall or impact since the last inspection.', 'Caída o impacto desde la última inspección.') },
 { zone: 'whole-device', sentence: m('Anything questionable: signs of a field repair.', 'Algo dudoso: señales de una reparación en campo.') },
];
const status = (languages: string[], o = {}) => ({ kind: 'status', ...base, languages, inspectedOn: '2026-11-24', dueOn: '2027-11-24', inspectorMark: 'R. Ibarra', ...o }) as any;
const quarantine = (languages: string[], n: number) => ({ kind: 'quarantine', ...base, languages, removedOn: '2026-11-24', removedBy: 'R. Ibarra', reasons: reasons.slice(0, n), keptAt: m('Red cage, bay 2', 'Jaula roja, puesto 2'), beforeReturn: [m('Certificate of the manufacturer or its authorised centre', 'Certificado del fabricante o de su centro autorizado'), m('New documented inspection by a competent person', 'Nueva inspección documentada por una persona competente')] }) as any;
const jobs: [string, any, any?][] = [
 ['s-en', status(['en'])], ['s-both', status(['en', 'es'])], ['s-dec', status(['es', 'en'], { dueOn: '2027-12-03', inspectedOn: '2026-12-03', manufacturer: 'Northfell Höhensicherung & Cía.', model: 'Cable retractor CR-15 stainless', serial: 'NF-2044-1700-AB-99', inspectorMark: 'Rosalía Ibarra Muñoz', station: 'Harrow Point depot, tool room 2' })],
 ['s-203', status(['en', 'es']), { dpi: 203 }], ['s-600', status(['en', 'es']), { dpi: 600 }],
 ['q-1', quarantine(['en'], 1)], ['q-3en', quarantine(['en'], 3)], ['q-3', quarantine(['en', 'es'], 3)], ['q-6', quarantine(['en', 'es'], 6)], ['q-12en', quarantine(['en'], 12)], ['q-12', quarantine(['en', 'es'], 12)], ['q-12a5', quarantine(['en', 'es'], 12), { stock: { widthMm: 148, heightMm: 210 } }],
 ['q-a6', quarantine(['en', 'es'], 3), { stock: { widthMm: 105, heightMm: 148 } }],['q-600', quarantine(['en', 'es'], 3), { dpi: 600 }],
 ['i', { kind: 'id', benchId }], ['i203', { kind: 'id', benchId }, { dpi: 203 }], ['s-small', status(['en']), { stock: { widthMm: 50, heightMm: 25 } }], ['s-75', status(['en']), { stock: { widthMm: 75, heightMm: 50 } }],
 ['s-cyr', status(['en'], { model: 'Жук' })],
];
const only = process.argv[2];
for (const [name, content, options] of jobs) {
  if (only && !name.startsWith(only)) continue;
  const t = performance.now();
  const r = await renderTag(content, options);
  console.log(name, (performance.now() - t).toFixed(0), 'ms', 'refused' in r ? JSON.stringify(r) : `${r.pdf.length} ${r.png.length} ${r.symbols.map((s) => s.text).join(' | ')}`);
  if (!('refused' in r)) { writeFileSync(`/tmp/tagout/${name}.pdf`, r.pdf); writeFileSync(`/tmp/tagout/${name}.png`, r.png); }
}
