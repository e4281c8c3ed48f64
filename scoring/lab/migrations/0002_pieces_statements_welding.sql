CREATE TABLE "statements" (
	"id" text PRIMARY KEY NOT NULL,
	"submission_id" text NOT NULL,
	"statement" text NOT NULL,
	"made" timestamp with time zone NOT NULL,
	"sent" timestamp with time zone,
	"refused" text
);
--> statement-breakpoint
CREATE TABLE "welding" (
	"trainee_id" text PRIMARY KEY NOT NULL,
	"class_id" text NOT NULL,
	"seen" timestamp with time zone NOT NULL
);
--> statement-breakpoint
ALTER TABLE "assignments" ADD COLUMN "start_word" text;--> statement-breakpoint
ALTER TABLE "submissions" ADD COLUMN "judge" text;--> statement-breakpoint
UPDATE "submissions" SET "judge" = a."judge" FROM "assignments" a WHERE a."id" = "submissions"."assignment_id";--> statement-breakpoint
ALTER TABLE "submissions" ALTER COLUMN "judge" SET NOT NULL;--> statement-breakpoint
ALTER TABLE "submissions" ADD COLUMN "carried" jsonb;--> statement-breakpoint
ALTER TABLE "trainees" ADD COLUMN "plate" integer;--> statement-breakpoint
UPDATE "trainees" SET "plate" = n."plate" FROM (SELECT "id", row_number() OVER (PARTITION BY "class_id" ORDER BY "made", "name_key") AS "plate" FROM "trainees") n WHERE n."id" = "trainees"."id" AND n."plate" <= 999;--> statement-breakpoint
ALTER TABLE "statements" ADD CONSTRAINT "statements_submission_id_submissions_id_fk" FOREIGN KEY ("submission_id") REFERENCES "public"."submissions"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "welding" ADD CONSTRAINT "welding_trainee_id_trainees_id_fk" FOREIGN KEY ("trainee_id") REFERENCES "public"."trainees"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "welding" ADD CONSTRAINT "welding_class_id_classes_id_fk" FOREIGN KEY ("class_id") REFERENCES "public"."classes"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "statements_waiting" ON "statements" USING btree ("sent","refused");--> statement-breakpoint
CREATE INDEX "welding_class" ON "welding" USING btree ("class_id","seen");--> statement-breakpoint
ALTER TABLE "submissions" ADD CONSTRAINT "submissions_judge_judges_digest_fk" FOREIGN KEY ("judge") REFERENCES "public"."judges"("digest") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE UNIQUE INDEX "trainees_plate" ON "trainees" USING btree ("class_id","plate");