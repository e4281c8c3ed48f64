CREATE TABLE "assignments" (
	"id" text PRIMARY KEY NOT NULL,
	"class_id" text NOT NULL,
	"judge" text NOT NULL,
	"title" text NOT NULL,
	"opens" timestamp with time zone NOT NULL,
	"closes" timestamp with time zone,
	"most_attempts" integer,
	"made" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "audit" (
	"id" bigserial PRIMARY KEY NOT NULL,
	"at" timestamp with time zone NOT NULL,
	"role" text NOT NULL,
	"who" text NOT NULL,
	"class_id" text,
	"did" text NOT NULL,
	"detail" jsonb NOT NULL
);
--> statement-breakpoint
CREATE TABLE "classes" (
	"id" text PRIMARY KEY NOT NULL,
	"name" text NOT NULL,
	"code" text NOT NULL,
	"marks" jsonb NOT NULL,
	"pins" boolean NOT NULL,
	"made" timestamp with time zone NOT NULL,
	CONSTRAINT "classes_code_unique" UNIQUE("code")
);
--> statement-breakpoint
CREATE TABLE "instructors" (
	"id" text PRIMARY KEY NOT NULL,
	"name" text NOT NULL,
	"password" text NOT NULL,
	"made" timestamp with time zone NOT NULL,
	CONSTRAINT "instructors_name_unique" UNIQUE("name")
);
--> statement-breakpoint
CREATE TABLE "judges" (
	"digest" text PRIMARY KEY NOT NULL,
	"content" text NOT NULL
);
--> statement-breakpoint
CREATE TABLE "overrides" (
	"id" bigserial PRIMARY KEY NOT NULL,
	"class_id" text NOT NULL,
	"assignment_id" text NOT NULL,
	"trainee_id" text NOT NULL,
	"mark" integer,
	"reason" text NOT NULL,
	"by" text NOT NULL,
	"at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "scores" (
	"attempt" text NOT NULL,
	"engine" text NOT NULL,
	"scoring" text NOT NULL,
	"judge" text NOT NULL,
	"result" text,
	"hand" text,
	"fault" text,
	"scored" timestamp with time zone NOT NULL,
	"took_ms" integer NOT NULL,
	"worker" text NOT NULL,
	CONSTRAINT "scores_attempt_engine_scoring_judge_pk" PRIMARY KEY("attempt","engine","scoring","judge")
);
--> statement-breakpoint
CREATE TABLE "sessions" (
	"token" text PRIMARY KEY NOT NULL,
	"instructor_id" text,
	"trainee_id" text,
	"csrf" text NOT NULL,
	"ends" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "submissions" (
	"id" text PRIMARY KEY NOT NULL,
	"class_id" text NOT NULL,
	"assignment_id" text NOT NULL,
	"trainee_id" text NOT NULL,
	"attempt" text NOT NULL,
	"bytes" integer NOT NULL,
	"received" timestamp with time zone NOT NULL,
	"number" integer NOT NULL,
	"late" boolean NOT NULL
);
--> statement-breakpoint
CREATE TABLE "teaches" (
	"class_id" text NOT NULL,
	"instructor_id" text NOT NULL,
	CONSTRAINT "teaches_class_id_instructor_id_pk" PRIMARY KEY("class_id","instructor_id")
);
--> statement-breakpoint
CREATE TABLE "trainees" (
	"id" text PRIMARY KEY NOT NULL,
	"class_id" text NOT NULL,
	"name" text NOT NULL,
	"name_key" text NOT NULL,
	"sourced_id" text,
	"pin" text,
	"made" timestamp with time zone NOT NULL
);
--> statement-breakpoint
ALTER TABLE "assignments" ADD CONSTRAINT "assignments_class_id_classes_id_fk" FOREIGN KEY ("class_id") REFERENCES "public"."classes"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "assignments" ADD CONSTRAINT "assignments_judge_judges_digest_fk" FOREIGN KEY ("judge") REFERENCES "public"."judges"("digest") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "overrides" ADD CONSTRAINT "overrides_class_id_classes_id_fk" FOREIGN KEY ("class_id") REFERENCES "public"."classes"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "overrides" ADD CONSTRAINT "overrides_assignment_id_assignments_id_fk" FOREIGN KEY ("assignment_id") REFERENCES "public"."assignments"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "overrides" ADD CONSTRAINT "overrides_trainee_id_trainees_id_fk" FOREIGN KEY ("trainee_id") REFERENCES "public"."trainees"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_instructor_id_instructors_id_fk" FOREIGN KEY ("instructor_id") REFERENCES "public"."instructors"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_trainee_id_trainees_id_fk" FOREIGN KEY ("trainee_id") REFERENCES "public"."trainees"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "submissions" ADD CONSTRAINT "submissions_class_id_classes_id_fk" FOREIGN KEY ("class_id") REFERENCES "public"."classes"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "submissions" ADD CONSTRAINT "submissions_assignment_id_assignments_id_fk" FOREIGN KEY ("assignment_id") REFERENCES "public"."assignments"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "submissions" ADD CONSTRAINT "submissions_trainee_id_trainees_id_fk" FOREIGN KEY ("trainee_id") REFERENCES "public"."trainees"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "teaches" ADD CONSTRAINT "teaches_class_id_classes_id_fk" FOREIGN KEY ("class_id") REFERENCES "public"."classes"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "teaches" ADD CONSTRAINT "teaches_instructor_id_instructors_id_fk" FOREIGN KEY ("instructor_id") REFERENCES "public"."instructors"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "trainees" ADD CONSTRAINT "trainees_class_id_classes_id_fk" FOREIGN KEY ("class_id") REFERENCES "public"."classes"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "assignments_class" ON "assignments" USING btree ("class_id");--> statement-breakpoint
CREATE INDEX "audit_class" ON "audit" USING btree ("class_id","id");--> statement-breakpoint
CREATE INDEX "overrides_class" ON "overrides" USING btree ("class_id");--> statement-breakpoint
CREATE INDEX "scores_hand" ON "scores" USING btree ("hand");--> statement-breakpoint
CREATE INDEX "submissions_class" ON "submissions" USING btree ("class_id","received");--> statement-breakpoint
CREATE INDEX "submissions_attempt" ON "submissions" USING btree ("attempt");--> statement-breakpoint
CREATE UNIQUE INDEX "submissions_number" ON "submissions" USING btree ("assignment_id","trainee_id","number");--> statement-breakpoint
CREATE UNIQUE INDEX "trainees_name" ON "trainees" USING btree ("class_id","name_key");