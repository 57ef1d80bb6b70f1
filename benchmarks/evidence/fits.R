# The same three models by glmmTMB, one thread, loading apart; usage: Rscript fits.R FILE. Prints model, seconds, then the
# coefficients.
suppressMessages(library(glmmTMB))
rows <- read.csv(commandArgs(trailingOnly = TRUE)[1])
rows$squad <- factor(rows$squad)
rows$club <- factor(rows$club)
fixed <- paste(grep("^c[0-9]", names(rows), value = TRUE), collapse = " + ")
control <- glmmTMBControl(parallel = 1)
fit <- function(name, outcome, random, family) {
  formula <- as.formula(paste(outcome, "~", fixed, "+ offset(log(hours)) +", random))
  seconds <- system.time(made <- glmmTMB(formula, rows, family = family, control = control))[["elapsed"]]
  cat(name, seconds, fixef(made)$cond, "\n")
}
fit("poisson", "y", "(1 | squad)", poisson)
fit("nested", "y", "(1 | squad) + (1 | club)", poisson)
fit("nb2", "ynb", "(1 | squad)", nbinom2)
