-- CreateTable
CREATE TABLE "FrozenConcentration" (
    "modelSlug" TEXT NOT NULL PRIMARY KEY,
    "bin" INTEGER NOT NULL
);
