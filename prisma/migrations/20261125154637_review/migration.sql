-- CreateTable
CREATE TABLE "WaitingCase" (
    "caseId" TEXT NOT NULL PRIMARY KEY,
    "since" DATETIME NOT NULL,
    "claimedBy" TEXT,
    "claimedUntil" DATETIME,
    CONSTRAINT "WaitingCase_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "WaitingCase_claimedBy_fkey" FOREIGN KEY ("claimedBy") REFERENCES "User" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CaseRevision" (
    "caseId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "content" TEXT NOT NULL,
    "writer" TEXT NOT NULL,
    "month" TEXT NOT NULL,

    PRIMARY KEY ("caseId", "number"),
    CONSTRAINT "CaseRevision_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "RequestedChange" (
    "caseId" TEXT NOT NULL,
    "changePosition" INTEGER NOT NULL,
    "position" INTEGER NOT NULL,
    "field" TEXT NOT NULL,
    "reason" TEXT NOT NULL,

    PRIMARY KEY ("caseId", "changePosition", "position"),
    CONSTRAINT "RequestedChange_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SecondReport" (
    "caseId" TEXT NOT NULL PRIMARY KEY,
    "ofCaseId" TEXT NOT NULL,
    CONSTRAINT "SecondReport_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SecondReport_ofCaseId_fkey" FOREIGN KEY ("ofCaseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CaseReport" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "caseId" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "since" DATETIME,
    "month" TEXT NOT NULL,
    "settledAs" TEXT,
    "note" TEXT,
    CONSTRAINT "CaseReport_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "WaitingCase_since_caseId_idx" ON "WaitingCase"("since", "caseId");

-- CreateIndex
CREATE INDEX "WaitingCase_claimedBy_idx" ON "WaitingCase"("claimedBy");

-- CreateIndex
CREATE INDEX "SecondReport_ofCaseId_idx" ON "SecondReport"("ofCaseId");

-- CreateIndex
CREATE INDEX "CaseReport_since_id_idx" ON "CaseReport"("since", "id");

-- CreateIndex
CREATE INDEX "CaseReport_caseId_idx" ON "CaseReport"("caseId");

-- What waits already waits from now on: when it came was not kept.
INSERT INTO "WaitingCase" ("caseId", "since")
SELECT "id", strftime('%Y-%m-%dT%H:%M:%f', 'now') || '+00:00' FROM "CaseFile" WHERE "status" IN ('submitted', 'resubmitted');
