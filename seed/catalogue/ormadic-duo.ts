import type { DeviceModel } from '../../shared/schemas/device';
import { ORMADIC } from './makers';
import { partList } from './part-list';

/** The chips are the same on both revisions but for the video side. */
const COMMON = `
  U1         processor            KP-8      DIP 40
  U2         video-generator      OD-VP1    DIP 40
  U3         sound-generator      SG-12     DIP 28
  U4         program-rom          2764      DIP 28
  U5         work-ram             6264      DIP 28
  U6,U7      video-ram            4464      DIP 18
  U8         sprite-generator     OD-SP1    DIP 28
  U9         address-decoder      74LS138   DIP 16
  U10        address-decoder      74LS32    DIP 14
  U11        bus-buffer           74LS245   DIP 20
  U12        bus-buffer           74LS244   DIP 20
  U13        io-port              74LS257   DIP 16
  U14        io-port              74LS273   DIP 20
  U15        clock-generator      74LS04    DIP 14
  U16        clock-generator      74LS74    DIP 14
  U17        reset-circuit        555       DIP 8
  U18        memory-timing        74LS00    DIP 14
  U19        palette              74LS374   DIP 20
  U20        sync-logic           74LS86    DIP 14
  Q1,Q2      video-buffer         -         TO-92 3
  Q3         amplifier            -         TO-92 3
  X1         clock-crystal        -         can 2
  CT1        colour-trimmer       -         radial 2
  C1,C2,C3   filter-capacitor     -         radial 2
  C4,C5      coupling-capacitor   -         radial 2
  C6         coupling-capacitor   -         radial 2
  C7         reset-circuit        -         radial 2
  C10-C30    decoupling-capacitor -         axial 2
  D1,D2      protection-diode     -         axial 2
  F1         fuse                 -         axial 2
  S1         power-switch         -         other 6
  S2         reset-circuit        -         other 2
  VR1        voltage-regulator    7805      TO-220 3
  J1         power-input-jack     -         connector 2
  J2         video-connector      -         connector 8
  J3         cartridge-connector  -         connector 50
  J4,J5      controller-port      -         connector 9
  J6         expansion-connector  -         connector 26
  BP1,BP2    button-pad           -         other 8
  RN1,RN2    input-filter         -         SIP 9
  PB1        trace                -         other 1
  PB2        solder-joint         -         other 1
`;

export const ormadicDuo: DeviceModel = {
  slug: 'ormadic-duo',
  name: 'Ormadic Duo',
  maker: ORMADIC,
  category: 'console',
  summary: 'Cartridge console for two players, with a sprite generator and three voices, fed by a 9 V adapter.',
  synonyms: ['duo', 'ormadic two', 'od duo'],
  boards: [
    {
      slug: 'ormadic-duo-rev-1',
      revision: '1',
      summary: 'First board: video through an encoder and an RF modulator, the large chips in sockets.',
      parts: partList(`${COMMON}
        U21        video-encoder        VE-4      DIP 16
        M1         rf-modulator         -         other 4
        XU1,XU2    ic-socket            -         DIP 40
        XU3        ic-socket            -         DIP 28
        XU4        ic-socket            -         DIP 28
      `),
      impossibleChecks: ['rail-12v'],
    },
    {
      slug: 'ormadic-duo-rev-2',
      revision: '2',
      summary: 'Later board: the same chips soldered in, an amplified video output in place of the modulator.',
      parts: partList(`${COMMON}
        U21        video-encoder        VE-4      DIP 16
        U22        video-buffer         4066      DIP 14
        C31-C36    decoupling-capacitor -         axial 2
        C8         coupling-capacitor   -         radial 2
        C9         filter-capacitor     -         radial 2
        HJ1        headphone-jack       -         connector 3
        RV1        volume-control       -         other 3
      `),
      impossibleChecks: [
        'rail-12v',
        'processor-swapped',
        'video-generator-swapped',
        'sound-generator-swapped',
        'io-port-swapped',
        'rom-swapped',
      ],
    },
  ],
};
