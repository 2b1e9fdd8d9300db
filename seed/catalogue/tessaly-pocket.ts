import type { DeviceModel } from '../../shared/schemas/device';
import { TESSALY } from './makers';
import { partList } from './part-list';

export const tessalyPocket: DeviceModel = {
  slug: 'tessaly-pocket',
  name: 'Tessaly Pocket',
  maker: TESSALY,
  category: 'handheld',
  summary: 'Handheld for cartridges with a backlit grey LCD, four cells or a 6 V adapter, and stereo on headphones.',
  synonyms: ['pocket', 'tess pocket', 't-pocket'],
  boards: [
    {
      slug: 'tessaly-pocket-rev-1',
      revision: '1',
      summary: 'Main board and LCD on one flex; surface-mounted chips, a small converter for 5 V and for the LCD.',
      parts: partList(`
        U1         processor            TP-1      QFP 80
        U2         work-ram             6264      SOIC 28
        U3         video-ram            6264      SOIC 28
        U4         video-generator      TP-LC2    QFP 64
        U5         lcd-driver           TP-LD     QFP 80
        U6         lcd-driver           TP-LD     QFP 80
        U7         program-rom          23256     SOIC 28
        U8         address-decoder      74HC138   SOIC 16
        U9         sound-generator      TP-SN     SOIC 24
        U10        amplifier            386       SOIC 8
        U11        reset-circuit        -         TO-92 3
        U12        dc-converter         -         SOIC 8
        U13        clock-generator      74HC04    SOIC 14
        U14        io-port              4021      SOIC 16
        Q1,Q2      dc-converter         -         TO-92 3
        Q3         backlight-inverter   -         TO-92 3
        T1         backlight-inverter   -         other 5
        VR2        voltage-regulator    78L05     TO-92 3
        L1,L2      dc-converter         -         radial 2
        X1         clock-crystal        -         can 2
        C1-C6      filter-capacitor     -         radial 2
        C7,C8      coupling-capacitor   -         radial 2
        C10-C26    decoupling-capacitor -         other 2
        D1,D2      protection-diode     -         axial 2
        F1         fuse                 -         axial 2
        S1         power-switch         -         other 6
        J1         power-input-jack     -         connector 3
        J2         cartridge-connector  -         connector 36
        J3         ribbon-cable         -         connector 21
        HJ1        headphone-jack       -         connector 5
        RV1        contrast-control     -         other 3
        RV2        volume-control       -         other 3
        BP1-BP3    button-pad           -         other 4
        BT1        battery-terminal     -         connector 2
        BT2        battery-terminal     -         connector 2
        LCD1       lcd-panel            -         other 120
        EL1        backlight            -         other 2
        SP1        speaker              -         other 2
        PB1        trace                -         other 1
        PB2        solder-joint         -         other 1
      `),
      impossibleChecks: ['backup-battery-voltage', 'battery-inspected'],
    },
  ],
};
