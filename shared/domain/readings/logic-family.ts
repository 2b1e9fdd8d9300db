/** Published levels of a logic family on a 5 V supply, in volts; null where the source gives none. */
export type LogicFamily = {
  name: string;
  supply: { low: number; high: number };
  /** What an input takes for high at least, and for low at most. */
  inputHigh: number;
  inputLow: number;
  /** What an output gives at least when high, and at most when low. */
  outputHigh: number | null;
  outputLow: number | null;
  source: string;
};

const HIGH_SPEED_CMOS =
  'JEDEC Standard 7-A, description of 54/74HC and 54/74HCT high-speed CMOS devices; at 5 V by 0.7 and 0.3 of the supply.';

const FAMILIES: readonly (LogicFamily & { partNumbers: RegExp })[] = [
  {
    name: '74LS',
    partNumbers: /^74LS\d/,
    supply: { low: 4.75, high: 5.25 },
    inputHigh: 2,
    inputLow: 0.8,
    outputHigh: 2.7,
    outputLow: 0.5,
    source: 'Data sheet of the 54/74LS00, recommended operating conditions and d.c. characteristics.',
  },
  {
    name: '74HCT',
    partNumbers: /^74HCT\d/,
    supply: { low: 4.5, high: 5.5 },
    inputHigh: 2,
    inputLow: 0.8,
    outputHigh: null,
    outputLow: null,
    source: HIGH_SPEED_CMOS,
  },
  {
    name: '74HC',
    partNumbers: /^74HC\d/,
    supply: { low: 2, high: 6 },
    inputHigh: 3.5,
    inputLow: 1.5,
    outputHigh: null,
    outputLow: null,
    source: HIGH_SPEED_CMOS,
  },
  {
    name: '74 (standard TTL)',
    partNumbers: /^74\d/,
    supply: { low: 4.75, high: 5.25 },
    inputHigh: 2,
    inputLow: 0.8,
    outputHigh: 2.4,
    outputLow: 0.4,
    source: 'Data sheet of the 5400/7400, recommended operating conditions and d.c. characteristics.',
  },
  {
    name: '4000 series CMOS',
    partNumbers: /^4[05]\d\d$/,
    supply: { low: 3, high: 18 },
    inputHigh: 3.5,
    inputLow: 1.5,
    outputHigh: 4.95,
    outputLow: 0.05,
    source: 'JEDEC Standard 13-B, description of B-series CMOS devices, at a supply of 5 V.',
  },
  {
    name: 'TTL-compatible memory',
    partNumbers: /^(41|44|61|62|21|27|23)\d{2,4}$/,
    supply: { low: 4.5, high: 5.5 },
    inputHigh: 2.4,
    inputLow: 0.8,
    outputHigh: 2.4,
    outputLow: 0.4,
    source: 'Common practice, no source: memories of this age keep to TTL levels on 5 V within 10 %.',
  },
];

/** The logic family of a standard part number; null where it is none, or none that levels are published for here. */
export function logicFamilyOf(partNumber: string | null): LogicFamily | null {
  return FAMILIES.find(({ partNumbers }) => partNumber !== null && partNumbers.test(partNumber)) ?? null;
}

/** Whether a pin of this name is the positive supply of a part on 5 V. */
export function isSupplyPin(name: string): boolean {
  return /^(VCC|VDD|AVCC)$/.test(name);
}

/** What an input of the family makes of a voltage: high, low, or `between`, which is neither. */
export function levelOf(family: LogicFamily, volts: number): 'high' | 'low' | 'between' {
  if (volts >= family.inputHigh) return 'high';
  return volts <= family.inputLow ? 'low' : 'between';
}
