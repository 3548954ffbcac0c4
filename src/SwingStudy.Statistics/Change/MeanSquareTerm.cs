namespace SwingStudy.Statistics.Change;

/// <summary>One mean square times its coefficient, in a variance that is a sum of such.</summary>
/// <param name="Value">Coefficient times mean square; negative where noise is taken out that another mean square holds.</param>
/// <param name="DegreesOfFreedom">Of the mean square; 0 where there is none, and the value 0 too.</param>
internal readonly record struct MeanSquareTerm(double Value, double DegreesOfFreedom);
