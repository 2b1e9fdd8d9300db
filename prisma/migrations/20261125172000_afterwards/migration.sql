-- CreateTable
CREATE TABLE "AfterReport" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "caseId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "months" INTEGER NOT NULL,
    "source" TEXT NOT NULL,
    "month" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    CONSTRAINT "AfterReport_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AfterReporter" (
    "reportId" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    CONSTRAINT "AfterReporter_reportId_fkey" FOREIGN KEY ("reportId") REFERENCES "AfterReport" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "AfterReporter_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AfterKey" (
    "caseId" TEXT NOT NULL PRIMARY KEY,
    "keyHash" TEXT NOT NULL,
    CONSTRAINT "AfterKey_caseId_fkey" FOREIGN KEY ("caseId") REFERENCES "CaseFile" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "AfterReport_status_id_idx" ON "AfterReport"("status", "id");

-- CreateIndex
CREATE INDEX "AfterReport_caseId_idx" ON "AfterReport"("caseId");

-- CreateIndex
CREATE INDEX "AfterReporter_userId_idx" ON "AfterReporter"("userId");

-- CreateIndex
CREATE UNIQUE INDEX "AfterKey_keyHash_key" ON "AfterKey"("keyHash");
