using System.Globalization;
using System.Text.Json;

namespace SwingStudy.Tests.Reference;

/// <summary>One worked example from outside: data in, values expected, with source and tolerance.</summary>
public sealed record ReferenceCase(string Topic, JsonElement Content)
{
    public string Id => Content.GetProperty("id").GetString()!;

    public JsonElement Inputs => Content.GetProperty("inputs");

    public JsonElement Expected => Content.GetProperty("expected");

    public JsonElement Tolerance => Content.GetProperty("tolerance");

    public string Definition => Content.TryGetProperty("definition", out var text) ? text.GetString() ?? "" : "";

    public bool Has(string input) => Inputs.TryGetProperty(input, out _);

    public bool Expects(string name) => Expected.TryGetProperty(name, out _);

    public double Number(string input) => ToNumber(Inputs.GetProperty(input));

    public int Integer(string input) => Inputs.GetProperty(input).GetInt32();

    public string Text(string input) => Inputs.GetProperty(input).GetString()!;

    public double[] Numbers(string input) => ToNumbers(Inputs.GetProperty(input));

    public double[][] Matrix(string input) => [.. Inputs.GetProperty(input).EnumerateArray().Select(ToNumbers)];

    public string[] Labels(string input) => [.. Inputs.GetProperty(input).EnumerateArray().Select(e => e.ToString())];

    public override string ToString() => Id;

    private static double[] ToNumbers(JsonElement array) => [.. array.EnumerateArray().Select(ToNumber)];

    private static double ToNumber(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Number => element.GetDouble(),
        JsonValueKind.Null => double.NaN,
        _ => double.Parse(element.GetString()!, CultureInfo.InvariantCulture),
    };
}
