# Fits of invented clubs and of data sets that ship with R packages, for './test --reference'.
# usage: Rscript fits.R FOLDER: writes CASE.csv, the rows, and fits.csv: case, term, estimate, error.
#
# glmmTMB stops where its coefficients are known to about 4e-5, so that its own objective, whose gradient is exact, is
# climbed to the top by Newton's method. glmer sums over points with tightened tolerances; its log likelihood lacks the sum
# of log f(y | mean = y), which is added.
suppressMessages({
  library(glmmTMB)
  library(lme4)
  library(MASS)
})
folder <- commandArgs(trailingOnly = TRUE)[1]
found <- list()
add <- function(case, term, estimate, error = NA)
  found[[length(found) + 1]] <<- data.frame(case = case, term = term, estimate = estimate, error = error)
save_rows <- function(case, rows) write.csv(rows, file.path(folder, paste0(case, ".csv")), row.names = FALSE)

# The top of a glmmTMB fit's own likelihood, and the errors there.
top <- function(fit) {
  objective <- fit$obj
  objective$env$inner.control$tol10 <- 0
  at <- fit$fit$par
  for (step in 1:6) {
    slope <- as.vector(objective$gr(at))
    bend <- optimHess(at, objective$fn, objective$gr, control = list(ndeps = rep(1e-4, length(at))))
    at <- at - solve(bend, slope)
  }
  list(at = at, errors = sqrt(diag(solve(bend))), log_likelihood = -objective$fn(at))
}

add_fit <- function(case, fit, names) {
  t <- top(fit)
  for (i in seq_along(names)) add(case, names[i], t$at[i], t$errors[i])
  add(case, "log_likelihood", t$log_likelihood)
}

# glmer's coefficients and deviation by 25 points.
add_points <- function(case, formula, rows, names) {
  fit <- glmer(formula, data = rows, family = poisson, nAGQ = 25,
               control = glmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-9, maxfun = 1e5), tolPwrss = 1e-11,
                                      check.conv.grad = "ignore", check.conv.hess = "ignore"))
  errors <- sqrt(diag(as.matrix(vcov(fit, use.hessian = TRUE))))
  for (i in seq_along(fixef(fit))) add(case, names[i], fixef(fit)[[i]], errors[[i]])
  add(case, "log squad deviation", log(attr(VarCorr(fit)[[1]], "stddev")[[1]]))
  y <- model.response(model.frame(fit))
  add(case, "log_likelihood", as.numeric(logLik(fit)) + sum(dpois(y, y, log = TRUE)))
}

invented <- function(seed, clubs, squads, weeks, club_sd, squad_sd, size = Inf) {
  set.seed(seed)
  rows <- expand.grid(week = 1:weeks, squad = 1:squads, club = 1:clubs)
  of_squad <- (rows$club - 1) * squads + rows$squad
  ages <- c("U11", "U13", "U15")
  rows$age <- ages[1 + of_squad %% 3]
  rows$warm_ups <- pmin(3, rpois(nrow(rows), 1.5))
  rows$hours <- round(runif(nrow(rows), 30, 70), 1)
  log_rate <- log(0.006) - 0.3 * rows$warm_ups + 0.2 * (rows$age == "U15") + rnorm(clubs, 0, club_sd)[rows$club] +
    rnorm(clubs * squads, 0, squad_sd)[of_squad]
  mean <- exp(log_rate) * rows$hours
  rows$injuries <- if (is.finite(size)) rnbinom(nrow(rows), size = size, mu = mean) else rpois(nrow(rows), mean)
  rows$squad <- paste0("s", of_squad)
  rows$club <- paste0("c", rows$club)
  rows
}

columns <- c("intercept", "warm_ups", "age: U13", "age: U15")
model <- injuries ~ warm_ups + age + offset(log(hours)) + (1 | squad)
for (seed in 1:3) {
  case <- paste0("club_", seed)
  rows <- invented(seed, 1, 24, 30, 0, 0.4)
  save_rows(case, rows)
  add_fit(paste0(case, "_poisson"), glmmTMB(model, rows, family = poisson), c(columns, "log squad deviation"))
  add_points(paste0(case, "_points"), model, rows, columns)
}
for (seed in 4:5) {
  case <- paste0("union_", seed)
  rows <- invented(seed, 12, 10, 20, 0.35, 0.4)
  save_rows(case, rows)
  nested <- injuries ~ warm_ups + age + offset(log(hours)) + (1 | squad) + (1 | club)
  add_fit(paste0(case, "_nested"), glmmTMB(nested, rows, family = poisson),
          c(columns, "log squad deviation", "log club deviation"))
}
for (seed in 6:7) {
  case <- paste0("uneven_", seed)
  rows <- invented(seed, 1, 30, 30, 0, 0.5, size = 0.8)
  save_rows(case, rows)
  add_fit(paste0(case, "_nb2"), glmmTMB(model, rows, family = nbinom2), c(columns, "log size", "log squad deviation"))
}

rows <- data.frame(TICKS = grouseticks$TICKS, YEAR = grouseticks$YEAR, BROOD = grouseticks$BROOD,
                   LOCATION = grouseticks$LOCATION, height = as.vector(scale(grouseticks$HEIGHT)), one = 1)
save_rows("ticks", rows)
years <- c("intercept", "YEAR: 96", "YEAR: 97", "height")
add_fit("ticks_poisson", glmmTMB(TICKS ~ YEAR + height + (1 | BROOD), rows, family = poisson), c(years, "log squad deviation"))
add_fit("ticks_nested", glmmTMB(TICKS ~ YEAR + height + (1 | BROOD) + (1 | LOCATION), rows, family = poisson),
        c(years, "log squad deviation", "log club deviation"))
add_fit("ticks_nb2", glmmTMB(TICKS ~ YEAR + height + (1 | BROOD), rows, family = nbinom2),
        c(years, "log size", "log squad deviation"))
add_points("ticks_points", TICKS ~ YEAR + height + (1 | BROOD), rows, years)

rows <- data.frame(incidence = cbpp$incidence, size = cbpp$size, period = cbpp$period, herd = cbpp$herd)
save_rows("herds", rows)
periods <- c("intercept", "period: 2", "period: 3", "period: 4")
herds <- incidence ~ period + offset(log(size)) + (1 | herd)
add_fit("herds_poisson", glmmTMB(herds, rows, family = poisson), c(periods, "log squad deviation"))
add_points("herds_points", herds, rows, periods)

rows <- data.frame(y = epil$y, trt = epil$trt, lbase = epil$lbase, lage = epil$lage, V4 = epil$V4, subject = epil$subject, one = 1)
rows$both <- rows$lbase * (rows$trt == "progabide")
save_rows("seizures", rows)
terms <- c("intercept", "lbase", "lage", "V4", "both", "trt: progabide")
seizures <- y ~ lbase + lage + V4 + both + trt + (1 | subject)
add_fit("seizures_poisson", glmmTMB(seizures, rows, family = poisson), c(terms, "log squad deviation"))
add_fit("seizures_nb2", glmmTMB(seizures, rows, family = nbinom2), c(terms, "log size", "log squad deviation"))
add_points("seizures_points", seizures, rows, terms)

rows <- data.frame(Days = quine$Days, Eth = quine$Eth, Sex = quine$Sex, Age = quine$Age, Lrn = quine$Lrn, one = 1)
save_rows("absence", rows)
pupils <- c("intercept", "Eth: N", "Sex: M", "Age: F1", "Age: F2", "Age: F3", "Lrn: SL")
add_fit("absence_nb2", glmmTMB(Days ~ Eth + Sex + Age + Lrn, rows, family = nbinom2), c(pupils, "log size"))
flat <- glm(Days ~ Eth + Sex + Age + Lrn, data = rows, family = poisson, control = list(epsilon = 1e-14))
for (i in seq_along(pupils)) add("absence_flat", pupils[i], coef(flat)[[i]], sqrt(diag(vcov(flat)))[[i]])
add("absence_flat", "log_likelihood", as.numeric(logLik(flat)))

out <- do.call(rbind, found)
out$estimate <- sprintf("%.12g", out$estimate)
out$error <- ifelse(is.na(out$error), "", sprintf("%.12g", as.numeric(out$error)))
write.csv(out, file.path(folder, "fits.csv"), row.names = FALSE, quote = TRUE)
cat(sprintf("R %s, glmmTMB %s, lme4 %s, MASS %s\n", getRversion(), packageVersion("glmmTMB"), packageVersion("lme4"),
            packageVersion("MASS")))
