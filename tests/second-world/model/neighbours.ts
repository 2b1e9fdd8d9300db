/** Roles that hang together on a board: a fault in one tends to show at its neighbours. */
const groups: readonly (readonly string[])[] = [
  ['work-ram', 'address-multiplexer', 'memory-timing', 'address-decoder'],
  ['work-ram', 'processor', 'bus-buffer', 'program-rom'],
  ['video-ram', 'video-generator', 'address-multiplexer', 'memory-timing', 'character-rom'],
  ['colour-ram', 'palette', 'video-generator'],
  ['graphics-rom', 'sprite-generator', 'video-generator'],
  ['processor', 'address-decoder', 'bus-buffer', 'program-rom'],
  ['clock-crystal', 'clock-generator', 'video-generator', 'colour-trimmer', 'processor'],
  ['reset-circuit', 'processor', 'io-port'],
  ['io-port', 'keyboard', 'ribbon-cable', 'controller-port', 'input-filter'],
  ['video-generator', 'video-encoder', 'sync-logic', 'palette'],
  ['video-encoder', 'video-buffer', 'rf-modulator', 'video-connector'],
  ['coupling-capacitor', 'amplifier', 'sound-generator', 'speaker', 'volume-control', 'headphone-jack'],
  ['voltage-regulator', 'filter-capacitor', 'rectifier', 'mains-transformer', 'decoupling-capacitor'],
  ['switching-transistor', 'start-capacitor', 'mains-filter-capacitor', 'rectifier', 'filter-capacitor'],
  ['power-switch', 'power-input-jack', 'fuse', 'protection-diode', 'voltage-regulator'],
  ['disk-controller', 'drive-logic', 'drive-motor', 'read-head', 'drive-belt'],
  ['laser-pickup', 'drive-logic', 'drive-motor'],
  ['tape-interface', 'read-head', 'drive-belt', 'drive-motor'],
  ['lcd-panel', 'lcd-driver', 'contrast-control', 'dc-converter', 'ribbon-cable'],
  ['flyback-transformer', 'horizontal-output', 'deflection-yoke', 'retrace-capacitor', 'main-supply-regulator'],
  ['horizontal-oscillator', 'horizontal-output', 'sync-separator'],
  ['vertical-amplifier', 'deflection-yoke', 'sync-separator'],
  ['video-output-stage', 'crt', 'screen-control', 'flyback-transformer'],
  ['cartridge-connector', 'bus-buffer', 'address-decoder'],
  ['trace', 'solder-joint', 'ic-socket'],
];

const pairs = new Set<string>();
for (const group of groups) {
  for (const a of group) for (const b of group) if (a !== b) pairs.add(`${a} ${b}`);
}

/** Whether a fault in one role tends to show at the other. */
export function areNeighbours(a: string, b: string): boolean {
  return pairs.has(`${a} ${b}`);
}
