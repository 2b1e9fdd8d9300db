-- CreateTable
CREATE TABLE "PostedWorkingUnit" (
    "unitId" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    CONSTRAINT "PostedWorkingUnit_unitId_fkey" FOREIGN KEY ("unitId") REFERENCES "WorkingUnit" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "PostedWorkingUnit_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BenchUnit" (
    "ownerId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "document" TEXT NOT NULL,
    "clock" INTEGER NOT NULL,
    "by" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,

    PRIMARY KEY ("ownerId", "id"),
    CONSTRAINT "BenchUnit_ownerId_fkey" FOREIGN KEY ("ownerId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BenchEntry" (
    "ownerId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "unitId" TEXT NOT NULL,
    "document" TEXT NOT NULL,
    "clock" INTEGER NOT NULL,
    "by" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,

    PRIMARY KEY ("ownerId", "id"),
    CONSTRAINT "BenchEntry_ownerId_fkey" FOREIGN KEY ("ownerId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- AlterTable: added in place, so that the readings below it stay.
ALTER TABLE "WorkingUnit" ADD COLUMN "status" TEXT NOT NULL DEFAULT 'accepted';

-- CreateIndex
CREATE INDEX "WorkingUnit_status_id_idx" ON "WorkingUnit"("status", "id");

-- CreateIndex
CREATE INDEX "PostedWorkingUnit_userId_idx" ON "PostedWorkingUnit"("userId");

-- CreateIndex
CREATE INDEX "BenchUnit_ownerId_seq_idx" ON "BenchUnit"("ownerId", "seq");

-- CreateIndex
CREATE INDEX "BenchEntry_ownerId_seq_idx" ON "BenchEntry"("ownerId", "seq");

-- CreateIndex
CREATE INDEX "BenchEntry_ownerId_unitId_idx" ON "BenchEntry"("ownerId", "unitId");
