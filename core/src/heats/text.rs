//! Temperatures and percentages as the sources' file has them.

/// `"1250 C"`, or nothing said.
pub(super) mod temperature {
    use serde::{Deserialize, Deserializer, Serializer, de};

    use crate::units::Temperature;

    pub(crate) fn serialize<S: Serializer>(
        it: &Option<Temperature>,
        to: S,
    ) -> Result<S::Ok, S::Error> {
        match it {
            Some(temperature) => to.serialize_some(&temperature.to_string()),
            None => to.serialize_none(),
        }
    }

    pub(crate) fn deserialize<'de, D: Deserializer<'de>>(
        from: D,
    ) -> Result<Option<Temperature>, D::Error> {
        let text = Option::<String>::deserialize(from)?;
        let read = text.map(|text| text.parse().map_err(de::Error::custom));
        read.transpose()
    }

    /// `"1250 C"`.
    pub(crate) mod always {
        use super::{Deserialize, Deserializer, Serializer, Temperature, de};

        pub(crate) fn serialize<S: Serializer>(it: &Temperature, to: S) -> Result<S::Ok, S::Error> {
            to.collect_str(it)
        }

        pub(crate) fn deserialize<'de, D: Deserializer<'de>>(
            from: D,
        ) -> Result<Temperature, D::Error> {
            let text = String::deserialize(from)?;
            text.parse().map_err(de::Error::custom)
        }
    }
}

/// `70 %` as `"70 %"`, or `"unknown"`.
pub(super) mod percent_or_unknown {
    use serde::{Deserialize, Deserializer, Serializer, de};

    use crate::units::quoted;

    const UNKNOWN: &str = "unknown";

    pub(crate) fn serialize<S: Serializer>(it: &Option<f64>, to: S) -> Result<S::Ok, S::Error> {
        match it {
            Some(percent) => to.serialize_str(&format!("{percent} %")),
            None => to.serialize_str(UNKNOWN),
        }
    }

    pub(crate) fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Option<f64>, D::Error> {
        let text = String::deserialize(from)?;
        let plain = text.trim().to_lowercase();
        if plain == UNKNOWN {
            return Ok(None);
        }
        let number = plain.trim_end_matches('%').trim().replace(',', ".");
        match number.parse::<f64>() {
            Ok(percent) if percent.is_finite() => Ok(Some(percent)),
            Ok(_) | Err(_) => Err(de::Error::custom(format!(
                "\"{}\" is no efficiency: write it as 70 % or unknown",
                quoted(&text, 40)
            ))),
        }
    }
}
