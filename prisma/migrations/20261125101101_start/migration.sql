-- CreateTable
CREATE TABLE "Maker" (
    "slug" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "DeviceModel" (
    "slug" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "category" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    "makerSlug" TEXT NOT NULL,
    CONSTRAINT "DeviceModel_makerSlug_fkey" FOREIGN KEY ("makerSlug") REFERENCES "Maker" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Board" (
    "slug" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "modelSlug" TEXT NOT NULL,
    "revision" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    CONSTRAINT "Board_modelSlug_fkey" FOREIGN KEY ("modelSlug") REFERENCES "DeviceModel" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BoardPart" (
    "boardSlug" TEXT NOT NULL,
    "designator" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "roleSlug" TEXT NOT NULL,
    "partNumber" TEXT,
    "package" TEXT NOT NULL,
    "pins" INTEGER NOT NULL,

    PRIMARY KEY ("boardSlug", "designator"),
    CONSTRAINT "BoardPart_boardSlug_fkey" FOREIGN KEY ("boardSlug") REFERENCES "Board" ("slug") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "BoardPart_roleSlug_fkey" FOREIGN KEY ("roleSlug") REFERENCES "Role" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PartPin" (
    "boardSlug" TEXT NOT NULL,
    "designator" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "name" TEXT NOT NULL,

    PRIMARY KEY ("boardSlug", "designator", "number"),
    CONSTRAINT "PartPin_boardSlug_designator_fkey" FOREIGN KEY ("boardSlug", "designator") REFERENCES "BoardPart" ("boardSlug", "designator") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ImpossibleCheck" (
    "boardSlug" TEXT NOT NULL,
    "checkSlug" TEXT NOT NULL,
    "position" INTEGER NOT NULL,

    PRIMARY KEY ("boardSlug", "checkSlug"),
    CONSTRAINT "ImpossibleCheck_boardSlug_fkey" FOREIGN KEY ("boardSlug") REFERENCES "Board" ("slug") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ImpossibleCheck_checkSlug_fkey" FOREIGN KEY ("checkSlug") REFERENCES "Check" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Role" (
    "slug" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "label" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "outside" BOOLEAN NOT NULL
);

-- CreateTable
CREATE TABLE "Symptom" (
    "slug" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "label" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "area" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "SymptomHiding" (
    "hiddenSlug" TEXT NOT NULL,
    "hiderSlug" TEXT NOT NULL,
    "position" INTEGER NOT NULL,

    PRIMARY KEY ("hiddenSlug", "hiderSlug"),
    CONSTRAINT "SymptomHiding_hiddenSlug_fkey" FOREIGN KEY ("hiddenSlug") REFERENCES "Symptom" ("slug") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SymptomHiding_hiderSlug_fkey" FOREIGN KEY ("hiderSlug") REFERENCES "Symptom" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Check" (
    "slug" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "label" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "area" TEXT NOT NULL,
    "howTo" TEXT NOT NULL,
    "targetRoleSlug" TEXT NOT NULL,
    "stage" INTEGER NOT NULL,
    "minutes" REAL NOT NULL,
    "workingOutcome" TEXT NOT NULL,
    "risk" INTEGER NOT NULL,
    CONSTRAINT "Check_targetRoleSlug_fkey" FOREIGN KEY ("targetRoleSlug") REFERENCES "Role" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CheckOutcome" (
    "checkSlug" TEXT NOT NULL,
    "slug" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "label" TEXT NOT NULL,

    PRIMARY KEY ("checkSlug", "slug"),
    CONSTRAINT "CheckOutcome_checkSlug_fkey" FOREIGN KEY ("checkSlug") REFERENCES "Check" ("slug") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CheckPrerequisite" (
    "laterSlug" TEXT NOT NULL,
    "earlierSlug" TEXT NOT NULL,
    "position" INTEGER NOT NULL,

    PRIMARY KEY ("laterSlug", "earlierSlug"),
    CONSTRAINT "CheckPrerequisite_laterSlug_fkey" FOREIGN KEY ("laterSlug") REFERENCES "Check" ("slug") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "CheckPrerequisite_earlierSlug_fkey" FOREIGN KEY ("earlierSlug") REFERENCES "Check" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "NumberRule" (
    "checkSlug" TEXT NOT NULL PRIMARY KEY,
    "unit" TEXT NOT NULL,
    "overload" TEXT,
    "source" TEXT NOT NULL,
    CONSTRAINT "NumberRule_checkSlug_fkey" FOREIGN KEY ("checkSlug") REFERENCES "Check" ("slug") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "NumberBand" (
    "checkSlug" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "outcomeSlug" TEXT NOT NULL,
    "min" REAL,
    "max" REAL,

    PRIMARY KEY ("checkSlug", "position"),
    CONSTRAINT "NumberBand_checkSlug_fkey" FOREIGN KEY ("checkSlug") REFERENCES "NumberRule" ("checkSlug") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "NumberBand_checkSlug_outcomeSlug_fkey" FOREIGN KEY ("checkSlug", "outcomeSlug") REFERENCES "CheckOutcome" ("checkSlug", "slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Cause" (
    "slug" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "label" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "roleSlug" TEXT NOT NULL,
    "mode" TEXT NOT NULL,
    "usualProof" TEXT NOT NULL,
    CONSTRAINT "Cause_roleSlug_fkey" FOREIGN KEY ("roleSlug") REFERENCES "Role" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Fix" (
    "slug" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "label" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "roleSlug" TEXT NOT NULL,
    "howTo" TEXT NOT NULL,
    "first" TEXT NOT NULL,
    "minutes" REAL NOT NULL,
    "partCostLowCents" INTEGER NOT NULL,
    "partCostHighCents" INTEGER NOT NULL,
    "stage" INTEGER NOT NULL,
    "risk" INTEGER NOT NULL,
    CONSTRAINT "Fix_roleSlug_fkey" FOREIGN KEY ("roleSlug") REFERENCES "Role" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "FixAddresses" (
    "fixSlug" TEXT NOT NULL,
    "causeSlug" TEXT NOT NULL,
    "position" INTEGER NOT NULL,

    PRIMARY KEY ("fixSlug", "causeSlug"),
    CONSTRAINT "FixAddresses_fixSlug_fkey" FOREIGN KEY ("fixSlug") REFERENCES "Fix" ("slug") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "FixAddresses_causeSlug_fkey" FOREIGN KEY ("causeSlug") REFERENCES "Cause" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Synonym" (
    "kind" TEXT NOT NULL,
    "owner" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "text" TEXT NOT NULL,

    PRIMARY KEY ("kind", "owner", "position")
);

-- CreateTable
CREATE TABLE "EntryTag" (
    "kind" TEXT NOT NULL,
    "owner" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "value" TEXT NOT NULL,

    PRIMARY KEY ("kind", "owner", "name", "position")
);

-- CreateTable
CREATE TABLE "CaseFile" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "modelSlug" TEXT NOT NULL,
    "boardSlug" TEXT,
    "month" TEXT NOT NULL,
    "narrative" TEXT NOT NULL,
    "complete" BOOLEAN NOT NULL,
    "proof" TEXT,
    "provedByStep" INTEGER,
    "outcome" TEXT NOT NULL,
    "soakMinutes" INTEGER,
    "status" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,
    "occurrence" INTEGER NOT NULL,
    CONSTRAINT "CaseFile_modelSlug_fkey" FOREIGN KEY ("modelSlug") REFERENCES "DeviceModel" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "CaseFile_boardSlug_fkey" FOREIGN KEY ("boardSlug") REFERENCES "Board" ("slug") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CaseSymptom" (
    "caseId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "symptomSlug" TEXT NOT NULL,
    "present" BOOLEAN NOT NULL,

    PRIMARY KEY ("caseId", "position"),
    CONSTRAINT "CaseSymptom_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "CaseSymptom_symptomSlug_fkey" FOREIGN KEY ("symptomSlug") REFERENCES "Symptom" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CaseStep" (
    "caseId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "checkSlug" TEXT,
    "outcomeSlug" TEXT,
    "designator" TEXT,
    "value" REAL,
    "unit" TEXT,
    "result" TEXT,

    PRIMARY KEY ("caseId", "position"),
    CONSTRAINT "CaseStep_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "CaseStep_checkSlug_outcomeSlug_fkey" FOREIGN KEY ("checkSlug", "outcomeSlug") REFERENCES "CheckOutcome" ("checkSlug", "slug") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CaseStepFix" (
    "caseId" TEXT NOT NULL,
    "stepPosition" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "fixSlug" TEXT NOT NULL,
    "designator" TEXT,

    PRIMARY KEY ("caseId", "stepPosition", "position"),
    CONSTRAINT "CaseStepFix_caseId_stepPosition_fkey" FOREIGN KEY ("caseId", "stepPosition") REFERENCES "CaseStep" ("caseId", "position") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "CaseStepFix_fixSlug_fkey" FOREIGN KEY ("fixSlug") REFERENCES "Fix" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CaseReading" (
    "caseId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "designator" TEXT NOT NULL,
    "pin" TEXT NOT NULL,
    "state" TEXT,
    "value" REAL,
    "unit" TEXT,

    PRIMARY KEY ("caseId", "position"),
    CONSTRAINT "CaseReading_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CaseCause" (
    "caseId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "causeSlug" TEXT NOT NULL,

    PRIMARY KEY ("caseId", "position"),
    CONSTRAINT "CaseCause_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "CaseCause_causeSlug_fkey" FOREIGN KEY ("causeSlug") REFERENCES "Cause" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CaseCauseDesignator" (
    "caseId" TEXT NOT NULL,
    "causePosition" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "designator" TEXT NOT NULL,

    PRIMARY KEY ("caseId", "causePosition", "position"),
    CONSTRAINT "CaseCauseDesignator_caseId_causePosition_fkey" FOREIGN KEY ("caseId", "causePosition") REFERENCES "CaseCause" ("caseId", "position") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CaseAfterCheck" (
    "caseId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "checkSlug" TEXT NOT NULL,

    PRIMARY KEY ("caseId", "position"),
    CONSTRAINT "CaseAfterCheck_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "CaseAfterCheck_checkSlug_fkey" FOREIGN KEY ("checkSlug") REFERENCES "Check" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "WorkingUnit" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "modelSlug" TEXT NOT NULL,
    "boardSlug" TEXT,
    "month" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,
    "occurrence" INTEGER NOT NULL,
    CONSTRAINT "WorkingUnit_modelSlug_fkey" FOREIGN KEY ("modelSlug") REFERENCES "DeviceModel" ("slug") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "WorkingUnit_boardSlug_fkey" FOREIGN KEY ("boardSlug") REFERENCES "Board" ("slug") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "WorkingReading" (
    "unitId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "designator" TEXT NOT NULL,
    "pin" TEXT NOT NULL,
    "state" TEXT,
    "value" REAL,
    "unitOfValue" TEXT,

    PRIMARY KEY ("unitId", "position"),
    CONSTRAINT "WorkingReading_unitId_fkey" FOREIGN KEY ("unitId") REFERENCES "WorkingUnit" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ModelSettings" (
    "hash" TEXT NOT NULL PRIMARY KEY,
    "document" TEXT NOT NULL,
    "recordCount" INTEGER NOT NULL,
    "fittedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "EventLog" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "at" DATETIME NOT NULL,
    "kind" TEXT NOT NULL,
    "actor" TEXT NOT NULL,
    "detail" TEXT NOT NULL
);

-- CreateIndex
CREATE INDEX "DeviceModel_makerSlug_idx" ON "DeviceModel"("makerSlug");

-- CreateIndex
CREATE INDEX "Board_modelSlug_idx" ON "Board"("modelSlug");

-- CreateIndex
CREATE INDEX "BoardPart_roleSlug_idx" ON "BoardPart"("roleSlug");

-- CreateIndex
CREATE INDEX "ImpossibleCheck_checkSlug_idx" ON "ImpossibleCheck"("checkSlug");

-- CreateIndex
CREATE INDEX "SymptomHiding_hiderSlug_idx" ON "SymptomHiding"("hiderSlug");

-- CreateIndex
CREATE INDEX "Check_targetRoleSlug_idx" ON "Check"("targetRoleSlug");

-- CreateIndex
CREATE INDEX "CheckPrerequisite_earlierSlug_idx" ON "CheckPrerequisite"("earlierSlug");

-- CreateIndex
CREATE INDEX "NumberBand_checkSlug_outcomeSlug_idx" ON "NumberBand"("checkSlug", "outcomeSlug");

-- CreateIndex
CREATE INDEX "Cause_roleSlug_idx" ON "Cause"("roleSlug");

-- CreateIndex
CREATE INDEX "Fix_roleSlug_idx" ON "Fix"("roleSlug");

-- CreateIndex
CREATE INDEX "FixAddresses_causeSlug_idx" ON "FixAddresses"("causeSlug");

-- CreateIndex
CREATE INDEX "Synonym_text_idx" ON "Synonym"("text");

-- CreateIndex
CREATE INDEX "EntryTag_kind_name_value_idx" ON "EntryTag"("kind", "name", "value");

-- CreateIndex
CREATE INDEX "CaseFile_status_id_idx" ON "CaseFile"("status", "id");

-- CreateIndex
CREATE INDEX "CaseFile_modelSlug_idx" ON "CaseFile"("modelSlug");

-- CreateIndex
CREATE INDEX "CaseFile_boardSlug_idx" ON "CaseFile"("boardSlug");

-- CreateIndex
CREATE UNIQUE INDEX "CaseFile_contentHash_occurrence_key" ON "CaseFile"("contentHash", "occurrence");

-- CreateIndex
CREATE INDEX "CaseSymptom_symptomSlug_idx" ON "CaseSymptom"("symptomSlug");

-- CreateIndex
CREATE INDEX "CaseStep_checkSlug_outcomeSlug_idx" ON "CaseStep"("checkSlug", "outcomeSlug");

-- CreateIndex
CREATE INDEX "CaseStepFix_fixSlug_idx" ON "CaseStepFix"("fixSlug");

-- CreateIndex
CREATE INDEX "CaseCause_causeSlug_idx" ON "CaseCause"("causeSlug");

-- CreateIndex
CREATE INDEX "CaseAfterCheck_checkSlug_idx" ON "CaseAfterCheck"("checkSlug");

-- CreateIndex
CREATE INDEX "WorkingUnit_modelSlug_idx" ON "WorkingUnit"("modelSlug");

-- CreateIndex
CREATE INDEX "WorkingUnit_boardSlug_idx" ON "WorkingUnit"("boardSlug");

-- CreateIndex
CREATE UNIQUE INDEX "WorkingUnit_contentHash_occurrence_key" ON "WorkingUnit"("contentHash", "occurrence");

-- CreateIndex
CREATE INDEX "ModelSettings_fittedAt_idx" ON "ModelSettings"("fittedAt");

-- CreateIndex
CREATE INDEX "EventLog_at_idx" ON "EventLog"("at");
