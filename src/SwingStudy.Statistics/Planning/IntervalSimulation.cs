namespace SwingStudy.Statistics.Planning;

/// <summary>How an interval behaves over simulated studies.</summary>
/// <param name="MeanWidth">Mean width.</param>
/// <param name="MeanWidthError">Standard error of the mean width from the number of simulated studies.</param>
/// <param name="Coverage">Share of studies whose interval holds the true value.</param>
/// <param name="Replications">Number of simulated studies.</param>
public sealed record IntervalSimulation(double MeanWidth, double MeanWidthError, double Coverage, int Replications);
