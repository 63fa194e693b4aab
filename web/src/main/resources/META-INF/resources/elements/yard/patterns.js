import { s } from '../make.js';

/** Hatches, so that nothing is told by colour alone. They keep their size on the screen: see `scalePatterns`. */
export function patterns() {
  return s('defs', {},
    pattern('hatch-soil', 12, [s('circle', { cx: 3, cy: 3, r: 0.9 }), s('circle', { cx: 9, cy: 8, r: 0.7 }), s('circle', { cx: 4.5, cy: 10, r: 0.5 })]),
    pattern('hatch-path', 14, [s('circle', { cx: 3, cy: 4, r: 1.1 }), s('circle', { cx: 10, cy: 11, r: 1.1 }), s('circle', { cx: 11, cy: 3, r: 0.7 })]),
    pattern('hatch-slab', 26, [s('path', { d: 'M0 0H26M0 13H26M0 0V13M13 13V26' })]),
    pattern('hatch-concrete', 20, [s('path', { d: 'M3 4l2 0l-1 2zM14 12l2 0l-1 2z' }), s('circle', { cx: 12, cy: 4, r: 0.7 })]),
    pattern('hatch-gravel', 10, [s('circle', { cx: 2.5, cy: 2.5, r: 1.2 }), s('circle', { cx: 7.5, cy: 7, r: 1.2 })]),
    pattern('hatch-grass', 16, [s('path', { d: 'M2 6v-4M4 6l1-3M10 14v-4M12 14l1-3' })]),
    pattern('hatch-deck', 9, [s('path', { d: 'M0 0H9' })]),
    pattern('hatch-clear', 9, [s('path', { d: 'M0 9L9 0' })]),
    pattern('hatch-house', 36, [s('rect', { width: 36, height: 36 }), s('path', { d: 'M0 0.5H36M0 12.5H36M0 24.5H36M9 0V12M27 12V24M9 24V36' })]));
}

function pattern(id, size, shapes) {
  return s('pattern', { id, width: size, height: size, patternUnits: 'userSpaceOnUse', class: id }, ...shapes);
}

/** In a group drawn at `k` pixels a millimetre the hatches stay as large as they were. */
export function scalePatterns(svg, k) {
  for (const element of svg.querySelectorAll('defs > pattern')) {
    if (element.id !== 'hatch-house') element.setAttribute('patternTransform', `scale(${1 / k})`);
  }
}

export const SURFACES = new Set(['slab', 'concrete', 'gravel', 'grass', 'soil', 'deck']);
