import type { DeviceModel } from '../../shared/schemas/device';
import { QUELLBROOK } from './makers';
import { partList } from './part-list';

/** What both revisions carry. */
const COMMON = `
  U1         processor            KP-8      DIP 40
  U2         video-generator      QB-VG2    DIP 40
  U3         sound-generator      SG-12     DIP 28
  U4         io-port              IA-20     DIP 40
  U5         program-rom          27128     DIP 28
  U6         character-rom        2764      DIP 28
  U7         address-decoder      74LS138   DIP 16
  U8         address-decoder      74LS139   DIP 16
  U9         bus-buffer           74LS245   DIP 20
  U10,U11    bus-buffer           74LS244   DIP 20
  U12-U19    work-ram             4164      DIP 16
  U20,U21    address-multiplexer  74LS157   DIP 16
  U22        memory-timing        74LS74    DIP 14
  U23        memory-timing        74LS00    DIP 14
  U24        clock-generator      74LS04    DIP 14
  U25        clock-generator      74LS161   DIP 16
  U26        reset-circuit        555       DIP 8
  U27        colour-ram           6116      DIP 24
  U30        sync-logic           74LS86    DIP 14
  U31        video-buffer         74LS04    DIP 14
  U32        tape-interface       339       DIP 14
  Q1         video-buffer         -         TO-92 3
  Q2         amplifier            -         TO-92 3
  X1         clock-crystal        -         can 2
  CT1        colour-trimmer       -         radial 2
  RV1        volume-control       -         other 3
  C1,C2      filter-capacitor     -         radial 2
  C3         filter-capacitor     -         axial 2
  C4         coupling-capacitor   -         radial 2
  C5         coupling-capacitor   -         radial 2
  C6         reset-circuit        -         radial 2
  C10-C37    decoupling-capacitor -         axial 2
  D1,D2      protection-diode     -         axial 2
  F1         fuse                 -         axial 2
  S1         power-switch         -         other 6
  S2         reset-circuit        -         other 2
  J1         power-input-jack     -         connector 3
  J2         video-connector      -         connector 5
  J3         cartridge-connector  -         connector 44
  J4         expansion-connector  -         connector 40
  J5         controller-port      -         connector 9
  J6         controller-port      -         connector 9
  J7         ribbon-cable         -         connector 20
  XU1        ic-socket            -         DIP 40
  XU2        ic-socket            -         DIP 40
  XU3        ic-socket            -         DIP 28
  XU4        ic-socket            -         DIP 40
  XU5        ic-socket            -         DIP 28
  KB1        keyboard             -         other 18
  RN1,RN2    input-filter         -         SIP 9
  SP1        speaker              -         other 2
  PB1        trace                -         other 1
  PB2        solder-joint         -         other 1
`;

export const quellbrook8: DeviceModel = {
  slug: 'quellbrook-8',
  name: 'Quellbrook 8',
  maker: QUELLBROOK,
  category: 'home-computer',
  summary: '8-bit home computer with 64 KB, a membrane keyboard, cartridge and tape, and an outside 9 V supply.',
  synonyms: ['qb8', 'qb-8', 'quellbrook eight', 'quellbrook'],
  boards: [
    {
      slug: 'quellbrook-8-rev-a',
      revision: 'A',
      summary: 'First board: 16 KB of video RAM in eight 4116 chips, which need a converter for 12 V and minus 5 V.',
      parts: partList(`${COMMON}
        U40-U47    video-ram            4116      DIP 16
        U48        dc-converter         -         DIP 8
        Q3         dc-converter         -         TO-220 3
        L1         dc-converter         -         radial 2
        C7         filter-capacitor     -         radial 2
        VR1        voltage-regulator    7805      TO-220 3
        U28        video-encoder        VE-4      DIP 16
        M1         rf-modulator         -         other 4
      `),
      impossibleChecks: [],
    },
    {
      slug: 'quellbrook-8-rev-b',
      revision: 'B',
      summary: 'Cost-reduced board: two 4464 video RAM chips, no converter, a cooler regulator, a composite socket only.',
      parts: partList(`${COMMON}
        U40,U41    video-ram            4464      DIP 18
        VR1,VR2    voltage-regulator    7805      TO-220 3
        U28        video-encoder        VE-4      DIP 16
        C38-C40    decoupling-capacitor -         axial 2
      `),
      impossibleChecks: ['rail-12v'],
    },
  ],
};
