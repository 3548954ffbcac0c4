using System.Collections;
using System.Globalization;
using System.Text.Json;

namespace SwingStudy.Tests.Reference;

/// <summary>Compares computed with expected values at the tolerance a case states.</summary>
public static class Expectation
{
    /// <summary>Every difference, as a sentence; none when all expected names are met.</summary>
    public static IReadOnlyList<string> Mismatches(ReferenceCase reference, IReadOnlyDictionary<string, object?> actual)
    {
        var found = new List<string>();
        foreach (var expected in reference.Expected.EnumerateObject())
        {
            if (!actual.TryGetValue(expected.Name, out var value))
                found.Add($"{expected.Name}: nothing computes it");
            else
                Compare(expected.Name, expected.Value, value, ToleranceOf(reference, expected.Name), found);
        }

        if (reference.Content.TryGetProperty("published", out var published) && published.ValueKind == JsonValueKind.Object)
            ComparePublished(published, actual, found);
        return found;
    }

    /// <summary>Printed numbers carry few digits: one tolerance for all of them, or one by name.</summary>
    private static void ComparePublished(JsonElement published, IReadOnlyDictionary<string, object?> actual, List<string> found)
    {
        if (!published.TryGetProperty("values", out var values) || values.ValueKind != JsonValueKind.Object)
            return;
        var tolerance = published.GetProperty("tolerance_abs");
        foreach (var printed in values.EnumerateObject())
        {
            var absolute = tolerance.ValueKind == JsonValueKind.Number ? tolerance.GetDouble() : tolerance.GetProperty(printed.Name).GetDouble();
            if (actual.TryGetValue(printed.Name, out var computed))
                Compare("published " + printed.Name, printed.Value, computed, (0, absolute), found);
            else
                found.Add($"published {printed.Name}: nothing computes it");
        }
    }

    private static (double Relative, double Absolute) ToleranceOf(ReferenceCase reference, string name)
    {
        var tolerance = reference.Tolerance;
        if (tolerance.TryGetProperty("by_name", out var byName) && byName.TryGetProperty(name, out var own))
            tolerance = own;
        return (Read(tolerance, "rel"), Read(tolerance, "abs"));
    }

    private static double Read(JsonElement tolerance, string name) => tolerance.TryGetProperty(name, out var value) ? value.GetDouble() : 0;

    private static void Compare(string name, JsonElement expected, object? actual, (double Relative, double Absolute) tolerance, List<string> found)
    {
        switch (expected.ValueKind)
        {
            case JsonValueKind.Null:
                if (actual is not null)
                    found.Add($"{name}: expected undefined, got {Show(actual)}");
                break;
            case JsonValueKind.True or JsonValueKind.False:
                if (actual is not bool truth || truth != expected.GetBoolean())
                    found.Add($"{name}: expected {expected}, got {Show(actual)}");
                break;
            case JsonValueKind.Number:
                CompareNumber(name, expected.GetDouble(), actual, tolerance, found);
                break;
            case JsonValueKind.String:
                CompareText(name, expected.GetString()!, actual, tolerance, found);
                break;
            case JsonValueKind.Array:
                CompareArray(name, expected, actual, tolerance, found);
                break;
            default:
                CompareObject(name, expected, actual, tolerance, found);
                break;
        }
    }

    private static void CompareNumber(string name, double expected, object? actual, (double Relative, double Absolute) tolerance, List<string> found)
    {
        if (actual is not (double or int or long or float))
        {
            found.Add($"{name}: expected {expected:R}, got {Show(actual)}");
            return;
        }

        var number = Convert.ToDouble(actual, CultureInfo.InvariantCulture);
        var allowed = Math.Max(tolerance.Absolute, tolerance.Relative * Math.Abs(expected));
        if (!(Math.Abs(number - expected) <= allowed))
            found.Add(string.Create(CultureInfo.InvariantCulture, $"{name}: expected {expected:R}, got {number:R}, off by {number - expected:G3}, allowed {allowed:G3}"));
    }

    /// <summary>A text is a label, or a number too large or small for JSON readers.</summary>
    private static void CompareText(string name, string expected, object? actual, (double Relative, double Absolute) tolerance, List<string> found)
    {
        if (actual is not string && double.TryParse(expected, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            CompareNumber(name, number, actual, tolerance, found);
        else if (actual as string != expected)
            found.Add($"{name}: expected '{expected}', got {Show(actual)}");
    }

    private static void CompareArray(string name, JsonElement expected, object? actual, (double Relative, double Absolute) tolerance, List<string> found)
    {
        if (actual is string or not IEnumerable)
        {
            found.Add($"{name}: expected an array, got {Show(actual)}");
            return;
        }

        var items = ((IEnumerable)actual).Cast<object?>().ToList();
        if (items.Count != expected.GetArrayLength())
        {
            found.Add($"{name}: expected {expected.GetArrayLength()} items, got {items.Count}");
            return;
        }

        for (var i = 0; i < items.Count; i++)
            Compare($"{name}[{i}]", expected[i], items[i], tolerance, found);
    }

    private static void CompareObject(string name, JsonElement expected, object? actual, (double Relative, double Absolute) tolerance, List<string> found)
    {
        if (actual is not IReadOnlyDictionary<string, object?> parts)
        {
            found.Add($"{name}: expected named parts, got {Show(actual)}");
            return;
        }

        foreach (var part in expected.EnumerateObject())
        {
            if (parts.TryGetValue(part.Name, out var value))
                Compare($"{name}.{part.Name}", part.Value, value, tolerance, found);
            else
                found.Add($"{name}.{part.Name}: nothing computes it");
        }
    }

    private static string Show(object? value) => value switch
    {
        null => "undefined",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };
}
