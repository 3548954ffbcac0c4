# The same fits as `calibrate mixed-model FILE.csv`, by lme4. Usage: Rscript mixed-model.R FILE.csv
suppressMessages(library(lme4))
file <- commandArgs(TRUE)[1]
d <- read.csv(file)
d$phase <- factor(d$phase, levels = c("pre", "post"))
number <- match(d$subject, unique(d$subject)) - 1
kept <- (7 * d$trial + 3 * d$session + 5 * number) %% 11 >= d$session %% 4
for (balanced in c(TRUE, FALSE)) {
  rows <- if (balanced) d else d[kept, ]
  tables <- split(rows, rows$outcome)
  used <- system.time({
    fits <- lapply(tables, function(t) lmer(value ~ phase + (1 | subject/session), t, REML = TRUE))
  })
  for (name in names(fits)) {
    v <- as.data.frame(VarCorr(fits[[name]]))
    cat(sprintf("%s phase=%.6f sd_subj=%.6f sd_sess=%.6f sd_res=%.6f reml=%.6f\n", name, fixef(fits[[name]])[2],
                v$sdcor[2], v$sdcor[1], v$sdcor[3], as.numeric(logLik(fits[[name]]))))
  }
  cat(sprintf("%s: %.4f s, %.4f s of processor, for %d fits\n", if (balanced) "balanced" else "unbalanced",
              used[["elapsed"]], used[["user.self"]] + used[["sys.self"]], length(fits)))
}
