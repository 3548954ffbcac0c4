namespace SwingStudy.Domain.Protocols;

/// <summary>A limit of a screening rule.</summary>
/// <param name="Name">Its key under <c>settings</c>.</param>
/// <param name="Default">Its value where a protocol says nothing.</param>
/// <param name="Least">Lowest value that makes sense.</param>
/// <param name="Most">Highest value that makes sense.</param>
/// <param name="Meaning">What it limits.</param>
public sealed record ScreeningSetting(string Name, double Default, double Least, double Most, string Meaning);
