using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Codebooks;

/// <summary>A dictionary as a Frictionless Table Schema, with the properties that the standard leaves to its users (<c>unit</c> and others).</summary>
/// <remarks>Data Package, version 2, Table Schema: unknown properties of a field are allowed and ignored by readers.</remarks>
public static class TableSchemaCodebook
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The document, indented, with line feeds.</summary>
    public static string Write(VariableDictionary dictionary)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://datapackage.org/profiles/2.0/tableschema.json");
            json.WriteString("name", dictionary.Name);
            json.WriteString("version", dictionary.Version.ToString());
            json.WriteString("sha256", dictionary.Hash.ToString());
            WriteTexts(json, "missingValues", [""]);
            json.WriteStartArray("fields");
            foreach (var variable in dictionary.Variables)
                WriteField(json, variable);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    /// <summary>Writes one variable as a field object.</summary>
    public static void WriteField(Utf8JsonWriter json, Variable variable)
    {
        json.WriteStartObject();
        json.WriteString("name", variable.Name);
        json.WriteString("type", TypeOf(variable.Type));
        json.WriteString("title", variable.Title);
        json.WriteString("description", variable.Description);
        WriteConstraints(json, variable);
        WriteText(json, "unit", variable.Unit);
        WriteText(json, "display_unit", variable.DisplayUnit);
        if (variable.Typical is { } typical)
        {
            json.WriteStartObject("typical");
            json.WriteNumber("low", typical.Low);
            json.WriteNumber("high", typical.High);
            json.WriteString("basis", typical.Basis);
            WriteText(json, "note", typical.Note);
            json.WriteEndObject();
        }

        json.WriteString("better", Word.Of(variable.Better));
        if (variable.Target is { } target)
            json.WriteNumber("target", target);
        json.WriteString("scale", Word.Of(variable.Scale));
        json.WriteString("level", Word.Of(variable.Level));
        json.WriteString("group", variable.Group);
        WriteText(json, "possible_basis", variable.PossibleBasis);
        WriteText(json, "axis", variable.Axis);
        WriteText(json, "formula", variable.Formula);
        WriteText(json, "definition", variable.Definition);
        WriteText(json, "reference", variable.Reference);
        if (variable.ZeroIsMissing)
            json.WriteBoolean("zero_is_missing", true);
        if (variable.Synonyms.Count > 0)
            WriteTexts(json, "synonyms", variable.Synonyms);
        json.WriteEndObject();
    }

    private static string TypeOf(VariableType type) => type switch
    {
        VariableType.Number => "number",
        VariableType.Integer => "integer",
        VariableType.Boolean => "boolean",
        VariableType.Category or VariableType.Text => "string",
        _ => throw new ArgumentOutOfRangeException(nameof(type), type, "Unknown type of variable."),
    };

    private static void WriteConstraints(Utf8JsonWriter json, Variable variable)
    {
        if (variable is { Minimum: null, Maximum: null, Words.Count: 0 })
            return;
        json.WriteStartObject("constraints");
        if (variable.Minimum is { } minimum)
            json.WriteNumber("minimum", minimum);
        if (variable.Maximum is { } maximum)
            json.WriteNumber("maximum", maximum);
        if (variable.Words.Count > 0)
            WriteTexts(json, "enum", variable.Words);

        json.WriteEndObject();
    }

    private static void WriteTexts(Utf8JsonWriter json, string name, IReadOnlyList<string> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
            json.WriteStringValue(value);
        json.WriteEndArray();
    }

    private static void WriteText(Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
            json.WriteString(name, value);
    }
}
