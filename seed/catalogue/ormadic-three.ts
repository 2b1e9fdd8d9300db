import type { DeviceModel } from '../../shared/schemas/device';
import { ORMADIC } from './makers';
import { partList } from './part-list';

export const ormadicThree: DeviceModel = {
  slug: 'ormadic-three',
  name: 'Ormadic Three',
  maker: ORMADIC,
  category: 'arcade-board',
  summary: 'Arcade board with tile and sprite hardware in plain logic, fed with 5 V and 12 V through its edge connector.',
  synonyms: ['three', 'od three', 'ormadic 3'],
  boards: [
    {
      slug: 'ormadic-three-rev-1',
      revision: '1',
      summary: 'Single large board, socketed ROMs and processor, a backup battery beside the work RAM.',
      parts: partList(`
        U1         processor            KP-8      DIP 40
        U2,U3      program-rom          27256     DIP 28
        U4,U5      work-ram             6116      DIP 24
        U6-U9      graphics-rom         27128     DIP 28
        U10,U11    video-ram            6116      DIP 24
        U12        colour-ram           6116      DIP 24
        U13        video-generator      OD-VP1    DIP 40
        U14        sprite-generator     OD-SP1    DIP 28
        U15        sound-generator      SG-12     DIP 28
        U16        character-rom        2764      DIP 28
        U17        address-decoder      74LS138   DIP 16
        U18        address-decoder      74LS139   DIP 16
        U19,U20    bus-buffer           74LS245   DIP 20
        U21,U22    bus-buffer           74LS244   DIP 20
        U23-U26    address-multiplexer  74LS157   DIP 16
        U27        memory-timing        74LS74    DIP 14
        U28        memory-timing        74LS00    DIP 14
        U29        clock-generator      74LS04    DIP 14
        U30,U31    clock-generator      74LS161   DIP 16
        U32        reset-circuit        555       DIP 8
        U33,U34    io-port              74LS257   DIP 16
        U35        io-port              74LS273   DIP 20
        U36        palette              74LS273   DIP 20
        U37        palette              74LS374   DIP 20
        U38        sync-logic           74LS86    DIP 14
        U39        sync-logic           74LS74    DIP 14
        U40        video-buffer         7406      DIP 14
        U41        amplifier            386       DIP 8
        U42        bus-buffer           74LS373   DIP 20
        X1         clock-crystal        -         can 2
        BT1        backup-battery       -         other 2
        C1-C3      filter-capacitor     -         radial 2
        C4,C5      coupling-capacitor   -         radial 2
        C6         reset-circuit        -         radial 2
        C10-C43    decoupling-capacitor -         axial 2
        DS1,DS2    dip-switch           -         DIP 16
        RV1        volume-control       -         other 3
        RN1-RN3    input-filter         -         SIP 9
        J1         edge-connector       -         connector 56
        CS1        coin-switch          -         other 3
        SP1        speaker              -         other 2
        XU1        ic-socket            -         DIP 40
        XU2,XU3    ic-socket            -         DIP 28
        XU6-XU9    ic-socket            -         DIP 28
        PB1        trace                -         other 1
        PB2        solder-joint         -         other 1
      `),
      impossibleChecks: [
        'rail-minus-5v',
        'regulator-input',
        'regulator-temperature',
        'video-generator-swapped',
        'io-port-swapped',
      ],
    },
  ],
};
