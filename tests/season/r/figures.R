# Values of R's vegan and MASS that the figures are held against: Rscript tests/season/r/figures.R > tests/season/r/figures.json
# Data: vegan's BCI (trees of Barro Colorado Island, first plot; Condit et al. 2002) and MASS's quine (days absent from
# school; Quine 1978), as the packages ship them.
suppressMessages({library(vegan); library(MASS)})
data(BCI); data(quine)
plot1 <- unlist(BCI[1, BCI[1, ] > 0])
sites <- BCI[1:10, ]
sizes <- round(sum(plot1) * (1:10) / 10)
number <- function(x) paste0("[", paste(format(as.numeric(x), digits = 12, trim = TRUE), collapse = ","), "]")
nb <- glm.nb(Days ~ 1, data = quine)
# watches of 10, 15 and 20 minutes in turn
minutes <- rep(c(10, 15, 20), length.out = nrow(quine))
nbo <- glm.nb(Days ~ 1 + offset(log(minutes)), data = quine)
rate <- sum(quine$Days) / sum(minutes)
accum <- specaccum(sites, method = "exact")
rare <- rarefy(plot1, sizes, se = TRUE)
chao <- estimateR(plot1)
cat("{\n")
cat("\"sites\": [", paste(apply(sites, 1, number), collapse = ","), "],\n")
cat('"plot1":', number(plot1), ",\n")
cat('"shannon":', number(diversity(plot1)), ',"simpson":', number(diversity(plot1, "simpson")), ',"invsimpson":', number(diversity(plot1, "inv")), ",\n")
cat('"chao1":', number(chao["S.chao1"]), ',"chao1se":', number(chao["se.chao1"]), ",\n")
cat('"sizes":', number(sizes), ',"rarefied":', number(rare[1, ]), ',"rarefiedse":', number(rare[2, ]), ",\n")
cat('"incidence":', number(colSums(sites > 0)[colSums(sites) > 0]), ',"accumulated":', number(accum$richness), ",\n")
cat('"days":', number(quine$Days), ',"theta":', number(nb$theta), ',"mean":', number(exp(coef(nb))), ",\n")
cat('"minutes":', number(minutes), ',"thetaoffset":', number(nbo$theta), ',"rateoffset":', number(exp(coef(nbo))), ',"pearson":', number(sum((quine$Days - rate * minutes)^2 / (rate * minutes))), "\n")
cat("}\n")
