import type { DeviceModel } from '../../shared/schemas/device';
import { QUELLBROOK } from './makers';
import { partList } from './part-list';

export const quellbrookCm14: DeviceModel = {
  slug: 'quellbrook-cm14',
  name: 'Quellbrook CM14',
  maker: QUELLBROOK,
  category: 'monitor',
  summary: '14-inch colour monitor with composite and RGB inputs and a small speaker. High voltage inside.',
  synonyms: ['cm14', 'cm-14', 'quellbrook monitor'],
  boards: [
    {
      slug: 'quellbrook-cm14-rev-1',
      revision: '1',
      summary: 'Main chassis with supply and deflection, a board on the tube neck for the video output stages.',
      parts: partList(`
        T1         mains-transformer      -         other 6
        T2         flyback-transformer    -         other 10
        D1-D4      rectifier              -         axial 2
        D5-D8      rectifier              -         axial 2
        Q1         switching-transistor   -         TO-220 3
        Q2         main-supply-regulator  -         TO-220 3
        U1         main-supply-regulator  -         SIP 9
        U2         horizontal-oscillator  CM-HV3    DIP 18
        Q3         horizontal-oscillator  -         TO-92 3
        Q4         horizontal-output      -         can 3
        U3         vertical-amplifier     CM-VA     SIP 9
        U4         sync-separator         CM-SS1    DIP 16
        Q5         sync-separator         -         TO-92 3
        U5         amplifier              386       DIP 8
        Q11,Q12    video-output-stage     -         TO-220 3
        Q13,Q14    video-output-stage     -         TO-220 3
        Q15,Q16    video-output-stage     -         TO-220 3
        Q17-Q20    video-output-stage     -         TO-92 3
        U6         video-output-stage     CM-RGB    DIP 24
        C1         mains-filter-capacitor -         other 2
        C2         mains-filter-capacitor -         other 2
        C3         start-capacitor        -         radial 2
        C4-C12     filter-capacitor       -         radial 2
        C13,C14    filter-capacitor       -         axial 2
        C15,C16    retrace-capacitor      -         other 2
        C17,C18    coupling-capacitor     -         radial 2
        C20-C33    filter-capacitor       -         radial 2
        RV1        screen-control         -         other 3
        RV2        volume-control         -         other 3
        PTC1       degauss                -         other 3
        L1         degauss                -         other 2
        L2         deflection-yoke        -         other 4
        CR1        convergence-rings      -         other 1
        V1         crt                    -         other 10
        F1,F2      fuse                   -         axial 2
        S1         power-switch           -         other 4
        J1         video-connector        -         connector 8
        J2         video-connector        -         connector 2
        W1         ribbon-cable           -         connector 12
        SP1        speaker                -         other 2
        PB1        trace                  -         other 1
        PB2        solder-joint           -         other 1
      `),
      impossibleChecks: [],
    },
  ],
};
