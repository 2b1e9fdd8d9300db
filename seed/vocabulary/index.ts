import type { Vocabulary } from '../../shared/schemas/vocabulary';
import { arcadeAndRibbonChecks } from './checks/arcade-and-ribbon';
import { batteriesCauses } from './causes/batteries';
import { batteriesFixes } from './fixes/batteries';
import { busLinesChecks } from './checks/bus-lines';
import { busesCauses } from './causes/buses';
import { capacitorsChecks } from './checks/capacitors';
import { capacitorsFixes } from './fixes/capacitors';
import { chipTemperatureChecks } from './checks/chip-temperature';
import { clockChecks } from './checks/clock';
import { clockResetCauses } from './causes/clock-reset';
import { clockResetFixes } from './fixes/clock-reset';
import { clockResetSymptoms } from './symptoms/clock-reset';
import { clockSourcesChecks } from './checks/clock-sources';
import { connectionsAndInputRoles } from './roles/connections-and-input';
import { connectionsCauses } from './causes/connections';
import { connectionsFixes } from './fixes/connections';
import { connectorsCauses } from './causes/connectors';
import { connectorsChecks } from './checks/connectors';
import { connectorsFixes } from './fixes/connectors';
import { continuityChecks } from './checks/continuity';
import { controlsSymptoms } from './symptoms/controls';
import { convertersFixes } from './fixes/converters';
import { driveAlignmentFixes } from './fixes/drive-alignment';
import { driveElectronicsFixes } from './fixes/drive-electronics';
import { driveHeadsCauses } from './causes/drive-heads';
import { driveMechanicsChecks } from './checks/drive-mechanics';
import { driveMechanicsFixes } from './fixes/drive-mechanics';
import { driveRollersLensChecks } from './checks/drive-rollers-lens';
import { driveSignalsChecks } from './checks/drive-signals';
import { driveSignalsReadChecks } from './checks/drive-signals-read';
import { drivesCauses } from './causes/drives';
import { drivesRoles } from './roles/drives';
import { drivesSymptoms } from './symptoms/drives';
import { handheldScreenCauses } from './causes/handheld-screen';
import { handheldScreenChecks } from './checks/handheld-screen';
import { handheldScreenFixes } from './fixes/handheld-screen';
import { handheldScreenSymptoms } from './symptoms/handheld-screen';
import { inputBatterySpeakerChecks } from './checks/input-battery-speaker';
import { inputCauses } from './causes/input';
import { inputFixes } from './fixes/input';
import { inputLinesChecks } from './checks/input-lines';
import { inputPartsChecks } from './checks/input-parts';
import { inputSymptoms } from './symptoms/input';
import { keyboardFixes } from './fixes/keyboard';
import { logicAndVideoRoles } from './roles/logic-and-video';
import { logicChipsFixes } from './fixes/logic-chips';
import { mechanicalBatterySymptoms } from './symptoms/mechanical-battery';
import { mediaSymptoms } from './symptoms/media';
import { memoryCauses } from './causes/memory';
import { memoryChipsFixes } from './fixes/memory-chips';
import { memoryDataChecks } from './checks/memory-data';
import { memoryStrobesChecks } from './checks/memory-strobes';
import { memorySymptoms } from './symptoms/memory';
import { monitorCauses } from './causes/monitor';
import { monitorDeflectionChecks } from './checks/monitor-deflection';
import { monitorHorizontalFixes } from './fixes/monitor-horizontal';
import { monitorImageSymptoms } from './symptoms/monitor-image';
import { monitorPartsChecks } from './checks/monitor-parts';
import { monitorPowerChecks } from './checks/monitor-power';
import { monitorSignalCauses } from './causes/monitor-signal';
import { monitorSupplyFixes } from './fixes/monitor-supply';
import { monitorSymptoms } from './symptoms/monitor';
import { monitorTubeCauses } from './causes/monitor-tube';
import { monitorTubeChecks } from './checks/monitor-tube';
import { monitorTubeFixes } from './fixes/monitor-tube';
import { monitorVerticalFixes } from './fixes/monitor-vertical';
import { noneCauses } from './causes/none';
import { outsideCauses } from './causes/outside';
import { outsideDiagnosisChecks } from './checks/outside-diagnosis';
import { outsideFixes } from './fixes/outside';
import { outsideMediaChecks } from './checks/outside-media';
import { outsideMonitorChecks } from './checks/outside-monitor';
import { outsidePictureChecks } from './checks/outside-picture';
import { outsidePowerChecks } from './checks/outside-power';
import { outsideRoles } from './roles/outside';
import { outsideSoundInputChecks } from './checks/outside-sound-input';
import { outsideSupplyChecks } from './checks/outside-supply';
import { outsideSupplyFixes } from './fixes/outside-supply';
import { outsideUnitChecks } from './checks/outside-unit';
import { piggybackChecks } from './checks/piggyback';
import { powerCapacitorsCauses } from './causes/power-capacitors';
import { powerCauses } from './causes/power';
import { powerContinuityChecks } from './checks/power-continuity';
import { powerInletFixes } from './fixes/power-inlet';
import { powerPartsFixes } from './fixes/power-parts';
import { powerSymptoms } from './symptoms/power';
import { processorVideoSwappedChecks } from './checks/processor-video-swapped';
import { railQualityChecks } from './checks/rail-quality';
import { railsChecks } from './checks/rails';
import { regulatorsChecks } from './checks/regulators';
import { resetAndControlChecks } from './checks/reset-and-control';
import { screensRoles } from './roles/screens';
import { selectLinesChecks } from './checks/select-lines';
import { socketsChecks } from './checks/sockets';
import { socketsFixes } from './fixes/sockets';
import { solderedChecks } from './checks/soldered';
import { soundAndPowerRoles } from './roles/sound-and-power';
import { soundCauses } from './causes/sound';
import { soundFixes } from './fixes/sound';
import { soundIoRomSwappedChecks } from './checks/sound-io-rom-swapped';
import { soundSignalChecks } from './checks/sound-signal';
import { soundSymptoms } from './symptoms/sound';
import { supplyPartsChecks } from './checks/supply-parts';
import { tapeChecks } from './checks/tape';
import { videoCauses } from './causes/video';
import { videoChipsFixes } from './fixes/video-chips';
import { videoOutputChecks } from './checks/video-output';
import { videoOutputFixes } from './fixes/video-output';
import { videoPictureSymptoms } from './symptoms/video-picture';
import { videoScreensSymptoms } from './symptoms/video-screens';
import { videoSignalChecks } from './checks/video-signal';
import { videoSignalSymptoms } from './symptoms/video-signal';
import { visualChecks } from './checks/visual';
import { wholeBoardChecks } from './checks/whole-board';

/**
 * The shared vocabulary: what the casebook, the reader and the fault models speak of. Slugs are for good:
 * posted cases carry them.
 *
 * Within one kind no two entries share a synonym. Across kinds some words are really ambiguous at the bench
 * ("cleaned the slot" is a check where its outcome matters and a fix where it cured); they are listed in
 * tests/seed/vocabulary.test.ts, and a reader has to offer both.
 */
export const vocabulary: Vocabulary = {
  roles: [
    ...logicAndVideoRoles,
    ...soundAndPowerRoles,
    ...connectionsAndInputRoles,
    ...drivesRoles,
    ...screensRoles,
    ...outsideRoles,
  ],
  symptoms: [
    ...powerSymptoms,
    ...clockResetSymptoms,
    ...videoScreensSymptoms,
    ...videoPictureSymptoms,
    ...videoSignalSymptoms,
    ...memorySymptoms,
    ...soundSymptoms,
    ...inputSymptoms,
    ...controlsSymptoms,
    ...mediaSymptoms,
    ...drivesSymptoms,
    ...mechanicalBatterySymptoms,
    ...monitorSymptoms,
    ...monitorImageSymptoms,
    ...handheldScreenSymptoms,
  ],
  checks: [
    ...outsideSupplyChecks,
    ...outsidePowerChecks,
    ...outsideUnitChecks,
    ...outsidePictureChecks,
    ...outsideSoundInputChecks,
    ...outsideMediaChecks,
    ...outsideDiagnosisChecks,
    ...outsideMonitorChecks,
    ...visualChecks,
    ...continuityChecks,
    ...powerContinuityChecks,
    ...supplyPartsChecks,
    ...capacitorsChecks,
    ...socketsChecks,
    ...processorVideoSwappedChecks,
    ...soundIoRomSwappedChecks,
    ...connectorsChecks,
    ...arcadeAndRibbonChecks,
    ...inputPartsChecks,
    ...inputBatterySpeakerChecks,
    ...driveMechanicsChecks,
    ...driveRollersLensChecks,
    ...monitorPartsChecks,
    ...railsChecks,
    ...railQualityChecks,
    ...regulatorsChecks,
    ...clockChecks,
    ...clockSourcesChecks,
    ...resetAndControlChecks,
    ...busLinesChecks,
    ...selectLinesChecks,
    ...memoryStrobesChecks,
    ...memoryDataChecks,
    ...chipTemperatureChecks,
    ...piggybackChecks,
    ...videoSignalChecks,
    ...videoOutputChecks,
    ...soundSignalChecks,
    ...inputLinesChecks,
    ...wholeBoardChecks,
    ...tapeChecks,
    ...driveSignalsChecks,
    ...driveSignalsReadChecks,
    ...handheldScreenChecks,
    ...monitorPowerChecks,
    ...monitorDeflectionChecks,
    ...monitorTubeChecks,
    ...solderedChecks,
  ],
  causes: [
    ...outsideCauses,
    ...powerCauses,
    ...powerCapacitorsCauses,
    ...clockResetCauses,
    ...busesCauses,
    ...memoryCauses,
    ...connectionsCauses,
    ...videoCauses,
    ...soundCauses,
    ...inputCauses,
    ...connectorsCauses,
    ...drivesCauses,
    ...driveHeadsCauses,
    ...batteriesCauses,
    ...handheldScreenCauses,
    ...monitorCauses,
    ...monitorSignalCauses,
    ...monitorTubeCauses,
    ...noneCauses,
  ],
  fixes: [
    ...outsideSupplyFixes,
    ...outsideFixes,
    ...powerInletFixes,
    ...powerPartsFixes,
    ...capacitorsFixes,
    ...convertersFixes,
    ...clockResetFixes,
    ...logicChipsFixes,
    ...memoryChipsFixes,
    ...socketsFixes,
    ...connectionsFixes,
    ...videoChipsFixes,
    ...videoOutputFixes,
    ...soundFixes,
    ...keyboardFixes,
    ...inputFixes,
    ...connectorsFixes,
    ...driveElectronicsFixes,
    ...driveMechanicsFixes,
    ...driveAlignmentFixes,
    ...batteriesFixes,
    ...handheldScreenFixes,
    ...monitorHorizontalFixes,
    ...monitorVerticalFixes,
    ...monitorSupplyFixes,
    ...monitorTubeFixes,
  ],
};
