using System.Collections.Frozen;

namespace SwingStudy.Statistics.Catalogue;

/// <summary>The sources of all statistics, once, by key.</summary>
public static class Citations
{
    private static readonly FrozenDictionary<string, string> ByKey = new Dictionary<string, string>
    {
        ["bakdash-marusich-2017"] = "Bakdash JZ, Marusich LR (2017). Repeated measures correlation. Frontiers in Psychology 8:456.",
        ["becker-1988"] = "Becker BJ (1988). Synthesizing standardized mean-change measures. British Journal of Mathematical and Statistical Psychology 41:257-278.",
        ["benjamini-hochberg-1995"] = "Benjamini Y, Hochberg Y (1995). Controlling the false discovery rate. Journal of the Royal Statistical Society B 57:289-300.",
        ["bland-altman-1986"] = "Bland JM, Altman DG (1986). Statistical methods for assessing agreement between two methods of clinical measurement. Lancet 327:307-310.",
        ["bland-altman-1995"] = "Bland JM, Altman DG (1995). Calculating correlation coefficients with repeated observations: Part 1, correlation within subjects. BMJ 310:446.",
        ["bland-altman-1999"] = "Bland JM, Altman DG (1999). Measuring agreement in method comparison studies. Statistical Methods in Medical Research 8:135-160.",
        ["bland-altman-2007"] = "Bland JM, Altman DG (2007). Agreement between methods of measurement with multiple observations per individual. Journal of Biopharmaceutical Statistics 17:571-582.",
        ["borenstein-2009"] = "Borenstein M, Hedges LV, Higgins JPT, Rothstein HR (2009). Introduction to Meta-Analysis. Wiley.",
        ["chan-1983"] = "Chan TF, Golub GH, LeVeque RJ (1983). Algorithms for computing the sample variance. The American Statistician 37:242-247.",
        ["cliff-1993"] = "Cliff N (1993). Dominance statistics: ordinal analyses to answer ordinal questions. Psychological Bulletin 114:494-509.",
        ["cumming-finch-2001"] = "Cumming G, Finch S (2001). A primer on the understanding, use, and calculation of confidence intervals based on central and noncentral distributions. Educational and Psychological Measurement 61:532-574.",
        ["davison-hinkley-1997"] = "Davison AC, Hinkley DV (1997). Bootstrap Methods and their Application. Cambridge University Press.",
        ["dersimonian-laird-1986"] = "DerSimonian R, Laird N (1986). Meta-analysis in clinical trials. Controlled Clinical Trials 7:177-188.",
        ["durbin-watson-1951"] = "Durbin J, Watson GS (1951). Testing for serial correlation in least squares regression II. Biometrika 38:159-178.",
        ["edgington-1975"] = "Edgington ES (1975). Randomization tests for one-subject operant experiments. Journal of Psychology 90:57-68.",
        ["edgington-onghena-2007"] = "Edgington ES, Onghena P (2007). Randomization Tests, 4th ed. Chapman and Hall.",
        ["efron-1987"] = "Efron B (1987). Better bootstrap confidence intervals. Journal of the American Statistical Association 82:171-185.",
        ["field-welsh-2007"] = "Field CA, Welsh AH (2007). Bootstrapping clustered data. Journal of the Royal Statistical Society B 69:369-390.",
        ["fisher-1935"] = "Fisher RA (1935). The Design of Experiments. Oliver and Boyd.",
        ["glass-1976"] = "Glass GV (1976). Primary, secondary, and meta-analysis of research. Educational Researcher 5(10):3-8.",
        ["hall-1988"] = "Hall P (1988). Theoretical comparison of bootstrap confidence intervals. Annals of Statistics 16:927-953.",
        ["hanley-mcneil-1982"] = "Hanley JA, McNeil BJ (1982). The meaning and use of the area under a receiver operating characteristic (ROC) curve. Radiology 143:29-36.",
        ["hedges-1999"] = "Hedges LV, Gurevitch J, Curtis PS (1999). The meta-analysis of response ratios in experimental ecology. Ecology 80:1150-1156.",
        ["hedges-2012"] = "Hedges LV, Pustejovsky JE, Shadish WR (2012). A standardized mean difference effect size for single case designs. Research Synthesis Methods 3:224-239.",
        ["hedges-2013"] = "Hedges LV, Pustejovsky JE, Shadish WR (2013). A standardized mean difference effect size for multiple baseline designs across individuals. Research Synthesis Methods 4:324-341.",
        ["hedges-olkin-1985"] = "Hedges LV, Olkin I (1985). Statistical Methods for Meta-Analysis. Academic Press.",
        ["higgins-thompson-2002"] = "Higgins JPT, Thompson SG (2002). Quantifying heterogeneity in a meta-analysis. Statistics in Medicine 21:1539-1558.",
        ["hochberg-1988"] = "Hochberg Y (1988). A sharper Bonferroni procedure for multiple tests of significance. Biometrika 75:800-802.",
        ["holm-1979"] = "Holm S (1979). A simple sequentially rejective multiple test procedure. Scandinavian Journal of Statistics 6:65-70.",
        ["hopkins-2000"] = "Hopkins WG (2000). Measures of reliability in sports medicine and science. Sports Medicine 30:1-15.",
        ["hopkins-2015"] = "Hopkins WG (2015). Individual responses made easy. Journal of Applied Physiology 118:1444-1446.",
        ["huitema-mckean-1991"] = "Huitema BE, McKean JW (1991). Autocorrelation estimation and inference with small samples. Psychological Bulletin 110:291-304.",
        ["huitema-mckean-2000"] = "Huitema BE, McKean JW (2000). Design specification issues in time-series intervention models. Educational and Psychological Measurement 60:38-58.",
        ["jacobson-truax-1991"] = "Jacobson NS, Truax P (1991). Clinical significance: a statistical approach to defining meaningful change in psychotherapy research. Journal of Consulting and Clinical Psychology 59:12-19.",
        ["kendall-1970"] = "Kendall MG (1970). Rank Correlation Methods, 4th ed. Griffin.",
        ["kenward-roger-1997"] = "Kenward MG, Roger JH (1997). Small sample inference for fixed effects from restricted maximum likelihood. Biometrics 53:983-997.",
        ["kerby-2014"] = "Kerby DS (2014). The simple difference formula: an approach to teaching nonparametric correlation. Comprehensive Psychology 3:11.IT.3.1.",
        ["knapp-hartung-2003"] = "Knapp G, Hartung J (2003). Improved tests for a random effects meta-regression with a single covariate. Statistics in Medicine 22:2693-2710.",
        ["lajeunesse-2015"] = "Lajeunesse MJ (2015). Bias and correction for the log response ratio in ecological meta-analysis. Ecology 96:2056-2063.",
        ["lakens-2013"] = "Lakens D (2013). Calculating and reporting effect sizes to facilitate cumulative science. Frontiers in Psychology 4:863.",
        ["lin-1989"] = "Lin LI-K (1989). A concordance correlation coefficient to evaluate reproducibility. Biometrics 45:255-268; corrected 2000, 56:324-325.",
        ["ma-2006"] = "Ma HH (2006). An alternative method for quantitative synthesis of single-subject researches: percentage of data points exceeding the median. Behavior Modification 30:598-617.",
        ["mackinnon-white-1985"] = "MacKinnon JG, White H (1985). Some heteroskedasticity-consistent covariance matrix estimators with improved finite sample properties. Journal of Econometrics 29:305-325.",
        ["mann-1945"] = "Mann HB (1945). Nonparametric tests against trend. Econometrica 13:245-259.",
        ["mann-whitney-1947"] = "Mann HB, Whitney DR (1947). On a test of whether one of two random variables is stochastically larger than the other. Annals of Mathematical Statistics 18:50-60.",
        ["mcgraw-wong-1996"] = "McGraw KO, Wong SP (1996). Forming inferences about some intraclass correlation coefficients. Psychological Methods 1:30-46.",
        ["morris-deshon-2002"] = "Morris SB, DeShon RP (2002). Combining effect size estimates in meta-analysis with repeated measures and independent-groups designs. Psychological Methods 7:105-125.",
        ["newcombe-2006"] = "Newcombe RG (2006). Confidence intervals for an effect size measure based on the Mann-Whitney statistic. Part 2. Statistics in Medicine 25:559-573.",
        ["newey-west-1987"] = "Newey WK, West KD (1987). A simple, positive semi-definite, heteroskedasticity and autocorrelation consistent covariance matrix. Econometrica 55:703-708.",
        ["nist-strd"] = "NIST. Statistical Reference Datasets: univariate summary statistics and analysis of variance. https://www.itl.nist.gov/div898/strd/",
        ["onghena-1992"] = "Onghena P (1992). Randomization tests for extensions and variations of ABAB single-case experimental designs: a rejoinder. Behavioral Assessment 14:153-171.",
        ["onghena-edgington-1994"] = "Onghena P, Edgington ES (1994). Randomization tests for restricted alternating treatments designs. Behaviour Research and Therapy 32:783-786.",
        ["parker-2007"] = "Parker RI, Hagan-Burke S, Vannest KJ (2007). Percentage of all non-overlapping data (PAND): an alternative to PND. Journal of Special Education 40:194-204.",
        ["parker-2011-review"] = "Parker RI, Vannest KJ, Davis JL (2011). Effect size in single-case research: a review of nine nonoverlap techniques. Behavior Modification 35:303-322.",
        ["parker-2011-tau-u"] = "Parker RI, Vannest KJ, Davis JL, Sauber SB (2011). Combining nonoverlap and trend for single-case research: Tau-U. Behavior Therapy 42:284-299.",
        ["parker-vannest-2009"] = "Parker RI, Vannest KJ (2009). An improved effect size for single-case research: nonoverlap of all pairs. Behavior Therapy 40:357-367.",
        ["paule-mandel-1982"] = "Paule RC, Mandel J (1982). Consensus values and weighting factors. Journal of Research of the National Bureau of Standards 87:377-385.",
        ["phipson-smyth-2010"] = "Phipson B, Smyth GK (2010). Permutation p-values should never be zero. Statistical Applications in Genetics and Molecular Biology 9: article 39.",
        ["pinheiro-bates-2000"] = "Pinheiro JC, Bates DM (2000). Mixed-Effects Models in S and S-PLUS. Springer.",
        ["prais-winsten-1954"] = "Prais SJ, Winsten CB (1954). Trend estimators and serial correlation. Cowles Commission discussion paper 383.",
        ["pratt-1959"] = "Pratt JW (1959). Remarks on zeros and ties in the Wilcoxon signed rank procedures. Journal of the American Statistical Association 54:655-667.",
        ["pustejovsky-2014"] = "Pustejovsky JE, Hedges LV, Shadish WR (2014). Design-comparable effect sizes in multiple baseline designs: a general modeling framework. Journal of Educational and Behavioral Statistics 39:368-393.",
        ["satterthwaite-1946"] = "Satterthwaite FE (1946). An approximate distribution of estimates of variance components. Biometrics Bulletin 2:110-114.",
        ["scruggs-1987"] = "Scruggs TE, Mastropieri MA, Casto G (1987). The quantitative synthesis of single-subject research. Remedial and Special Education 8:24-33.",
        ["searle-1971"] = "Searle SR (1971). Linear Models. Wiley, chapters 10 and 11.",
        ["sen-1968"] = "Sen PK (1968). Estimates of the regression coefficient based on Kendall's tau. Journal of the American Statistical Association 63:1379-1389.",
        ["shrout-fleiss-1979"] = "Shrout PE, Fleiss JL (1979). Intraclass correlations: uses in assessing rater reliability. Psychological Bulletin 86:420-428.",
        ["spearman-1910"] = "Spearman C (1910). Correlation calculated from faulty data. British Journal of Psychology 3:271-295; Brown W, ibid. 296-322.",
        ["tarlow-2017"] = "Tarlow KR (2017). An improved rank correlation effect size statistic for single-case designs: baseline corrected tau. Behavior Modification 41:427-467.",
        ["vargha-delaney-2000"] = "Vargha A, Delaney HD (2000). A critique and improvement of the CL common language effect size statistics. Journal of Educational and Behavioral Statistics 25:101-132.",
        ["viechtbauer-2007"] = "Viechtbauer W (2007). Confidence intervals for the amount of heterogeneity in meta-analysis. Statistics in Medicine 26:37-52.",
        ["weir-2005"] = "Weir JP (2005). Quantifying test-retest reliability using the intraclass correlation coefficient and the SEM. Journal of Strength and Conditioning Research 19:231-240.",
        ["welch-1947"] = "Welch BL (1947). The generalization of 'Student's' problem when several different population variances are involved. Biometrika 34:28-35.",
        ["wilcoxon-1945"] = "Wilcoxon F (1945). Individual comparisons by ranking methods. Biometrics Bulletin 1:80-83.",
        ["zieba-2010"] = "Zieba A (2010). Effective number of observations and unbiased estimators of variance for autocorrelated data. Metrology and Measurement Systems 17:3-16.",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>All keys, sorted.</summary>
    public static IReadOnlyList<string> Keys { get; } = [.. ByKey.Keys.Order(StringComparer.Ordinal)];

    /// <summary>The full reference of a key.</summary>
    /// <exception cref="KeyNotFoundException">No source has this key.</exception>
    public static string Get(string key) => ByKey.TryGetValue(key, out var text) ? text : throw new KeyNotFoundException($"No citation has the key '{key}'.");
}
