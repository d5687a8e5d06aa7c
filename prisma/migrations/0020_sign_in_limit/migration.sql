-- Tries to sign in, counted per window of time (lib/access/sign-in-limit.ts).
CREATE TABLE "sign_in_limit" (
    "key" TEXT NOT NULL,
    "attempts" INTEGER NOT NULL,
    "resetsAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "sign_in_limit_pkey" PRIMARY KEY ("key")
);
